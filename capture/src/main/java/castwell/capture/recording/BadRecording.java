package castwell.capture.recording;

import java.nio.file.Path;

/**
 * Why a file can't be replayed, as one sentence for a person that says what is wrong, where, and
 * what to do.
 */
public final class BadRecording extends Exception {
  private static final long serialVersionUID = 1L;

  BadRecording(Path file, String what) {
    super(file + ": " + what);
  }

  BadRecording(Path file, long line, String what) {
    super(file + ", line " + line + ": " + what);
  }
}
