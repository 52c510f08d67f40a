package castwell.capture.intake.sheet;

import castwell.analysis.wording.Phrase;
import castwell.capture.command.Refused;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.ToIntFunction;

/** Collects what is wrong with a sheet, so that everything can be mended at once. */
public final class Complaints {
  private final List<BadLine> lines = new ArrayList<>();

  /** Does something with each thing; one that fails doesn't stop the others. */
  public <T> void each(Iterable<T> things, ToIntFunction<T> line, Consumer<T> work) {
    for (T thing : things) {
      try {
        work.accept(thing);
      } catch (CantRead | Refused e) {
        lines.add(new BadLine(line.applyAsInt(thing), e.phrase()));
      }
    }
  }

  /**
   * Refuses the sheet if anything was wrong.
   *
   * @throws SheetRefused with all that was
   */
  public void raise(String source) {
    if (!lines.isEmpty()) {
      lines.sort(Comparator.comparingInt(BadLine::line));
      throw new SheetRefused(Phrase.of("sheet.bad_lines", lines.size(), source), lines);
    }
  }
}
