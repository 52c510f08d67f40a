package castwell.web.settings;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.FuzzInputs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Any settings file is refused in one sentence, or read. {@code .ci/fuzz 60 settings} looks for
 * more inputs.
 */
public class SettingsFuzzTest {
  private static final Path FOLDER = FuzzInputs.folder();

  static Stream<Path> inputs() {
    return FuzzInputs.of("settings");
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void isRefusedOrRead(Path input) {
    fuzzerTestOneInput(FuzzInputs.read(input));
  }

  /** The fuzzer's way in. */
  public static void fuzzerTestOneInput(byte[] input) {
    try {
      Files.write(FOLDER.resolve("castwell.toml"), input);
      Settings settings = SettingsFile.read(FOLDER);
      assertThat(settings.stations()).isNotEmpty();
      assertThat(SettingsFile.read(FOLDER)).isEqualTo(settings);
    } catch (BadSettings e) {
      assertThat(e.getMessage()).contains(FOLDER.toString()).endsWith(".");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
