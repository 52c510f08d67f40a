package castwell.capture.recording;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A recording that is read line by line. The whole file is checked first, so that none is half
 * replayed.
 */
public final class Recording implements AutoCloseable {
  private final RecordingText text;
  private final long sizeBytes;

  private Recording(RecordingText text, long sizeBytes) {
    this.text = text;
    this.sizeBytes = sizeBytes;
  }

  /**
   * Opens a recording and checks all of it.
   *
   * @throws BadRecording when there is no such file, or any part of it can't be understood
   */
  public static Recording open(Path file) throws BadRecording {
    if (Files.notExists(file)) {
      throw new BadRecording(file, "there is no such file; check the path.");
    }
    if (!Files.isRegularFile(file)) {
      throw new BadRecording(file, "not a file; give the path of one recording.");
    }
    if (!Files.isReadable(file)) {
      throw new BadRecording(file, "may not be read; give yourself the right to read it.");
    }
    try {
      try (RecordingText check = new RecordingText(file)) {
        while (check.next().isPresent()) {}
      }
      return new Recording(new RecordingText(file), Files.size(file));
    } catch (IOException e) {
      throw new BadRecording(file, "can't be read (" + e.getMessage() + "); try a copy of it.");
    }
  }

  public RecordingHeader header() {
    return text.header();
  }

  /**
   * Reads the next line; empty after the last.
   *
   * @throws UncheckedIOException when the file was changed or lost since it was opened
   */
  public Optional<RecordedLine> next() {
    try {
      return text.next();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (BadRecording e) {
      throw new UncheckedIOException(new IOException(e.getMessage(), e));
    }
  }

  /** Reads the next lines, at most this many; fewer at the end, and then none. */
  public List<RecordedLine> next(int most) {
    return Stream.generate(this::next)
        .limit(most)
        .takeWhile(Optional::isPresent)
        .flatMap(Optional::stream)
        .toList();
  }

  /** How many bytes have been read, 0 to {@link #sizeBytes}. */
  public long bytesRead() {
    return text.bytesRead();
  }

  public long sizeBytes() {
    return sizeBytes;
  }

  @Override
  public void close() {
    text.close();
  }
}
