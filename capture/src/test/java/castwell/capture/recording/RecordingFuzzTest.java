package castwell.capture.recording;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.FuzzInputs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Any file is refused in one sentence, or read and, written again, read as the same. {@code
 * .ci/fuzz 60 recording} looks for more inputs.
 */
public class RecordingFuzzTest {
  private static final Path FOLDER = FuzzInputs.folder();

  private record Read(RecordingHeader header, List<RecordedLine> lines) {}

  static Stream<Path> inputs() {
    return FuzzInputs.of("recording");
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void isRefusedOrReadAlike(Path input) {
    fuzzerTestOneInput(FuzzInputs.read(input));
  }

  /** The fuzzer's way in. */
  public static void fuzzerTestOneInput(byte[] input) {
    try {
      Path file = Files.write(FOLDER.resolve("any.rec"), input);
      Read read = read(file);
      Path copy = FOLDER.resolve("copy.rec");
      Files.deleteIfExists(copy);
      if (write(copy, read)) {
        assertThat(read(copy)).isEqualTo(read);
      }
    } catch (BadRecording e) {
      assertThat(e.getMessage()).startsWith(FOLDER.resolve("any.rec").toString()).endsWith(".");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Read read(Path file) throws BadRecording {
    try (Recording recording = Recording.open(file)) {
      List<RecordedLine> lines = new ArrayList<>();
      for (Optional<RecordedLine> line = recording.next();
          line.isPresent();
          line = recording.next()) {
        lines.add(line.get());
      }
      return new Read(recording.header(), lines);
    }
  }

  /** Lines as {@link RecordedLine#toString} escapes them, since some hold a line feed. */
  private static boolean write(Path file, Read read) throws IOException {
    try {
      RecordingWriter.create(file, read.header(), 0).close();
    } catch (IllegalArgumentException e) {
      assertThat(read.header().notes().toString() + read.header().name())
          .containsPattern("[\0-\37]");
      return false;
    }
    StringBuilder text = new StringBuilder(Files.readString(file, UTF_8));
    read.lines().forEach(line -> text.append(line).append('\n'));
    Files.writeString(file, text);
    return true;
  }
}
