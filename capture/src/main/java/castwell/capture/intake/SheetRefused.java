package castwell.capture.intake;

import java.util.List;

/** Why nothing of a sheet was taken in: one sentence, and the lines that are wrong. */
public final class SheetRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<BadLine> lines;

  SheetRefused(String sentence, List<BadLine> lines) {
    super(sentence);
    this.lines = List.copyOf(lines);
  }

  SheetRefused(String sentence) {
    this(sentence, List.of());
  }

  /** Ascending; empty where the whole sheet is wrong. */
  public List<BadLine> lines() {
    return lines;
  }
}
