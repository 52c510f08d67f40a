package castwell.capture.recording;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.Seed;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written reads back equal: the format's own promise, no outside source. */
class RecordingRoundTripTest {
  private static final Instant STARTED = Instant.parse("2026-05-02T09:14:07.120Z");

  @TempDir Path folder;

  @Test
  void anyBytesReadBackAsTheyCame() throws Exception {
    long seed = Seed.of(RecordingRoundTripTest.class);
    Random random = new Random(seed);
    long startMicros = 5_000_000_000L;
    long micros = startMicros;
    List<RecordedLine> sent = new ArrayList<>();
    Path file = folder.resolve("random.rec");
    try (RecordingWriter writer =
        RecordingWriter.create(file, RecordingHeader.of("random", STARTED), startMicros)) {
      for (int i = 0; i < 500; i++) {
        micros += random.nextInt(100_000);
        byte[] line = new byte[random.nextInt(200)];
        random.nextBytes(line);
        for (int j = 0; j < line.length; j++) {
          line[j] = line[j] == '\n' ? (byte) '\\' : line[j];
        }
        sent.add(new RecordedLine(micros - startMicros, line));
        sendInPortions(writer, micros, line, random);
      }
    }
    assertThat(read(file)).isEqualTo(sent);
  }

  private static void sendInPortions(
      RecordingWriter writer, long micros, byte[] line, Random random) throws IOException {
    byte[] all = Arrays.copyOf(line, line.length + 2);
    all[line.length] = '\r';
    all[line.length + 1] = '\n';
    int cut = random.nextInt(all.length);
    writer.received(micros, Arrays.copyOfRange(all, 0, cut));
    writer.received(micros, Arrays.copyOfRange(all, cut, all.length));
  }

  @Test
  void aLineIsStampedWhenItsLastByteCame() throws Exception {
    Path file = folder.resolve("stamp.rec");
    try (RecordingWriter writer =
        RecordingWriter.create(file, RecordingHeader.of("stamp", STARTED), 1000)) {
      writer.received(1100, "$H,1".getBytes(US_ASCII));
      writer.received(1250, "*0000\nrest".getBytes(US_ASCII));
      writer.received(1300, " of it".getBytes(US_ASCII));
    }
    assertThat(read(file))
        .containsExactly(
            new RecordedLine(250, "$H,1*0000".getBytes(US_ASCII)),
            new RecordedLine(300, "rest of it".getBytes(US_ASCII)));
  }

  @Test
  void eachLineIsInTheFileAtOnce() throws Exception {
    Path file = folder.resolve("flushed.rec");
    try (RecordingWriter writer =
        RecordingWriter.create(file, RecordingHeader.of("flushed", STARTED), 0)) {
      writer.received(7, "one\r\n".getBytes(US_ASCII));
      assertThat(Files.readString(file)).endsWith("\n7 one\n");
    }
  }

  @Test
  void anEndlessLineComesInPieces() throws Exception {
    Path file = folder.resolve("endless.rec");
    byte[] nines = new byte[10_000];
    Arrays.fill(nines, (byte) '9');
    try (RecordingWriter writer =
        RecordingWriter.create(file, RecordingHeader.of("endless", STARTED), 0)) {
      writer.received(3, nines);
      writer.received(4, "\r\n".getBytes(US_ASCII));
    }
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    for (RecordedLine line : read(file)) {
      assertThat(line.bytes().length).isLessThanOrEqualTo(RecordingWriter.LONGEST_PIECE);
      joined.write(line.bytes());
    }
    assertThat(joined.toByteArray()).isEqualTo(nines);
  }

  @Test
  void theHeaderReadsBackInMetres() throws Exception {
    RecordingHeader header =
        new RecordingHeader(
            "meadow",
            STARTED,
            OptionalDouble.of(0.6096),
            OptionalDouble.of(0.00029),
            OptionalDouble.of(2.0),
            Map.of("clock", "resonator", "weather", "kühl: 4 °C"));
    Path file = folder.resolve("header.rec");
    RecordingWriter.create(file, header, 0).close();
    try (Recording recording = Recording.open(file)) {
      assertThat(recording.header()).isEqualTo(header);
      assertThat(recording.next()).isEmpty();
      assertThat(recording.bytesRead()).isEqualTo(recording.sizeBytes());
    }
    assertThat(Files.readString(file)).contains("# gate-spacing-mm: 609.6\n");
  }

  @Test
  void neverWritesOverAFile() throws Exception {
    Path file = Files.writeString(folder.resolve("kept.rec"), "kept");
    assertThatThrownBy(() -> RecordingWriter.create(file, RecordingHeader.of("x", STARTED), 0))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("kept");
  }

  @Test
  void aNameThatWouldBreakTheHeaderIsRefused() {
    RecordingHeader header = RecordingHeader.of("two\nlines", STARTED);
    assertThatThrownBy(() -> RecordingWriter.create(folder.resolve("x.rec"), header, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static List<RecordedLine> read(Path file) throws BadRecording {
    List<RecordedLine> lines = new ArrayList<>();
    try (Recording recording = Recording.open(file)) {
      for (Optional<RecordedLine> line = recording.next();
          line.isPresent();
          line = recording.next()) {
        lines.add(line.get());
      }
    }
    return lines;
  }
}
