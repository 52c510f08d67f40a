package castwell.capture.intake.sheet;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Telling;
import java.util.List;

/** Says why nothing of a sheet was taken in, and which lines are wrong. */
public final class SheetRefused extends RuntimeException implements Telling {
  private static final long serialVersionUID = 1L;

  private final transient Phrase phrase;
  private final transient List<BadLine> lines;

  public SheetRefused(Phrase phrase, List<BadLine> lines) {
    super(phrase.written());
    this.phrase = phrase;
    this.lines = List.copyOf(lines);
  }

  public SheetRefused(String key, Object... values) {
    this(Phrase.of(key, values), List.of());
  }

  @Override
  public Phrase phrase() {
    return phrase;
  }

  /** The wrong lines, ascending; empty where the sheet as a whole is wrong. */
  public List<BadLine> lines() {
    return lines;
  }
}
