package castwell.capture.wire;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.FuzzInputs;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Any bytes read as the slow reader reads them. {@code .ci/fuzz 60 wire} looks for more inputs. */
public class WireFuzzTest {

  static Stream<Path> inputs() {
    return FuzzInputs.of("wire");
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void isReadAlike(Path input) {
    fuzzerTestOneInput(FuzzInputs.read(input));
  }

  /** The fuzzer's way in. */
  public static void fuzzerTestOneInput(byte[] input) {
    byte[] bytes = FuzzInputs.withCheckSums(input);
    List<Sentence> sentences = SlowReader.read(new String(bytes, ISO_8859_1));
    Heard whole = new Heard().hear(bytes);
    assertThat(whole.sentences).isEqualTo(sentences);
    Heard inPieces = new Heard();
    for (byte b : bytes) {
      inPieces.hear(new byte[] {b});
    }
    assertThat(inPieces.sentences).isEqualTo(sentences);
    assertThat(inPieces.faults.all()).isEqualTo(whole.faults.all());
  }
}
