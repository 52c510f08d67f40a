package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.web.cli.Castwell;
import java.net.URISyntaxException;
import java.nio.file.Path;

/** A short recording whose five passages are all clean shots. */
final class Recordings {
  /** As the replay names its station. */
  static final String STATION = "clean-five";

  private Recordings() {}

  static Path cleanFive() {
    try {
      return Path.of(Recordings.class.getResource("clean-five.rec").toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  static void replayInto(Path folder) {
    assertThat(Castwell.run("replay", "--data", folder.toString(), cleanFive().toString()))
        .isZero();
  }
}
