package castwell.capture.recording;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** Reads the text of a recording: the header when it is opened, then one line after another. */
final class RecordingText implements AutoCloseable {
  private static final int LONGEST_LINE = 1 << 16;

  private record TextLine(byte[] bytes, boolean ended) {}

  private final Path file;
  private final InputStream in;
  private final RecordingHeader header;
  private Optional<TextLine> ahead;
  private long lineNumber;
  private long bytesRead;
  private long lastMicros;

  RecordingText(Path file) throws IOException, BadRecording {
    this.file = file;
    this.in = new BufferedInputStream(Files.newInputStream(file), LONGEST_LINE);
    try {
      this.header = readHeader();
    } catch (IOException | BadRecording e) {
      close();
      throw e;
    }
  }

  RecordingHeader header() {
    return header;
  }

  long bytesRead() {
    return bytesRead;
  }

  Optional<RecordedLine> next() throws IOException, BadRecording {
    if (ahead.isEmpty()) {
      return Optional.empty();
    }
    TextLine text = ahead.get();
    Optional<RecordedLine> line = parse(text.bytes());
    if (!text.ended() && !line.map(RecordedLine::isWhole).orElse(false)) {
      throw cut();
    }
    if (line.isEmpty()) {
      throw new BadRecording(
          file,
          lineNumber,
          "not \"<microseconds> <what came>\" with \\xNN for odd bytes; mend or delete that line.");
    }
    if (line.get().micros() < lastMicros) {
      throw new BadRecording(
          file,
          lineNumber,
          "its time stamp runs backwards, from "
              + lastMicros
              + " to "
              + line.get().micros()
              + " microseconds; keep one recording in a file.");
    }
    lastMicros = line.get().micros();
    ahead = readLine();
    return line;
  }

  private RecordingHeader readHeader() throws IOException, BadRecording {
    HeaderText text = new HeaderText(file);
    ahead = readLine();
    while (ahead.isPresent() && startsHeaderLine(ahead.get().bytes())) {
      if (!ahead.get().ended()) {
        throw cut();
      }
      text.add(lineNumber, new String(ahead.get().bytes(), UTF_8));
      ahead = readLine();
    }
    return text.read();
  }

  private static boolean startsHeaderLine(byte[] bytes) {
    return bytes.length > 0 && bytes[0] == '#';
  }

  private BadRecording cut() {
    return new BadRecording(
        file,
        lineNumber,
        "the last line is cut off; copy the file once more, or delete that line.");
  }

  /**
   * Reads up to the next LF. A CR before it comes from an editor and is dropped, since a received
   * one is escaped.
   */
  private Optional<TextLine> readLine() throws IOException, BadRecording {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(128);
    for (int next = in.read(); next >= 0; next = in.read()) {
      bytesRead++;
      if (next == '\n') {
        lineNumber++;
        byte[] line = bytes.toByteArray();
        boolean withCr = line.length > 0 && line[line.length - 1] == '\r';
        return Optional.of(
            new TextLine(withCr ? Arrays.copyOf(line, line.length - 1) : line, true));
      }
      if (bytes.size() == LONGEST_LINE) {
        throw new BadRecording(
            file, lineNumber + 1, "the line doesn't end, so this is no recording; check the path.");
      }
      bytes.write(next);
    }
    if (bytes.size() == 0) {
      return Optional.empty();
    }
    lineNumber++;
    return Optional.of(new TextLine(bytes.toByteArray(), false));
  }

  private static Optional<RecordedLine> parse(byte[] text) {
    long micros = 0;
    int at = 0;
    for (; at < text.length && text[at] >= '0' && text[at] <= '9'; at++) {
      if (at == 18) {
        return Optional.empty();
      }
      micros = micros * 10 + text[at] - '0';
    }
    if (at == 0 || at == text.length || text[at] != ' ') {
      return Optional.empty();
    }
    long stamp = micros;
    return Escapes.undo(text, at + 1).map(bytes -> new RecordedLine(stamp, bytes));
  }

  @Override
  public void close() {
    try {
      in.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
