package castwell.capture.recording;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Writes what a port says as a recording, each line as soon as it is whole. */
public final class RecordingWriter implements AutoCloseable {
  /** The longest piece, in bytes: a line without an end is written in pieces of this length. */
  static final int LONGEST_PIECE = 4096;

  private final BufferedWriter out;
  private final long startMicros;
  private final byte[] piece = new byte[LONGEST_PIECE + 1];
  private int length;
  private long lastMicros;

  private RecordingWriter(BufferedWriter out, long startMicros) {
    this.out = out;
    this.startMicros = startMicros;
    this.lastMicros = startMicros;
  }

  /**
   * Begins a new file.
   *
   * @param startMicros the host's monotonic clock at {@code header.started()}
   * @throws IOException when there is such a file already, or it can't be written
   * @throws IllegalArgumentException when a name or note can't stand in a header
   */
  public static RecordingWriter create(Path file, RecordingHeader header, long startMicros)
      throws IOException {
    String text = HeaderText.write(header);
    BufferedWriter out = Files.newBufferedWriter(file, UTF_8, StandardOpenOption.CREATE_NEW);
    out.write(text);
    out.flush();
    return new RecordingWriter(out, startMicros);
  }

  /**
   * Takes bytes as they came, in any portions.
   *
   * @param micros the host's monotonic clock when they came; not before the last
   */
  public void received(long micros, byte[] bytes) throws IOException {
    lastMicros = micros;
    for (byte value : bytes) {
      if (value == '\n') {
        boolean withCr = length > 0 && piece[length - 1] == '\r';
        writeLine(withCr ? length - 1 : length);
        continue;
      }
      if (length == piece.length) {
        writeLine(LONGEST_PIECE);
        piece[length++] = piece[LONGEST_PIECE];
      }
      piece[length++] = value;
    }
    out.flush();
  }

  private void writeLine(int bytes) throws IOException {
    StringBuilder text = new StringBuilder(bytes + 24);
    text.append(lastMicros - startMicros).append(' ');
    for (int i = 0; i < bytes; i++) {
      Escapes.append(text, piece[i]);
    }
    out.append(text).append('\n');
    length = 0;
  }

  /** Ends the file; an unfinished line is kept as far as it came. */
  @Override
  public void close() throws IOException {
    try (out) {
      if (length > 0) {
        writeLine(length);
      }
    }
  }
}
