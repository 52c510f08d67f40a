package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import castwell.capture.FuzzInputs;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Any lines at any times, from the wire to the disk: nothing throws, and what is stored is what
 * intact sentences told. {@code .ci/fuzz 60 pipeline} looks for more inputs.
 */
public class PipelineFuzzTest {
  /** Milliseconds since the line before, then the line. */
  private static final Pattern TIMED = Pattern.compile("(?:(\\d{1,7}) )?(.*)", Pattern.DOTALL);

  private static final Path FOLDER = FuzzInputs.folder();

  static Stream<Path> inputs() {
    return FuzzInputs.of("pipeline");
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void isStoredAsTold(Path input) {
    fuzzerTestOneInput(FuzzInputs.read(input));
  }

  /** The fuzzer's way in. */
  public static void fuzzerTestOneInput(byte[] input) {
    beginAnew();
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    try (RangeBench bench = RangeBench.in(FOLDER)) {
      HandFedStation lane = new HandFedStation(bench, "range");
      lane.plugIn(0);
      long micros = 0;
      String text = new String(FuzzInputs.withCheckSums(input), ISO_8859_1);
      for (String line : text.split("\n", -1)) {
        Matcher timed = TIMED.matcher(line);
        timed.matches();
        micros += timed.group(1) == null ? 1000 : 1000 * Long.parseLong(timed.group(1));
        byte[] bytes = timed.group(2).getBytes(ISO_8859_1);
        lane.hear(micros, bytes);
        said.writeBytes(bytes);
        said.write('\n');
      }
      lane.passTimeUntil(micros + 60_000_000);
      lane.end(micros + 60_000_000);
    }
    EdgesHeld.check(FOLDER, IntactEdge.in(said.toByteArray()));
  }

  /** An empty store that was made before: making one takes longer than all the rest. */
  private static void beginAnew() {
    try {
      Path empty = FOLDER.resolve("empty");
      if (Files.notExists(empty)) {
        RangeBench.in(FOLDER).close();
        Files.move(FOLDER.resolve("castwell.db"), empty);
      }
      Files.deleteIfExists(FOLDER.resolve("castwell.db-wal"));
      Files.deleteIfExists(FOLDER.resolve("castwell.db-shm"));
      Files.copy(empty, FOLDER.resolve("castwell.db"), StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
