package castwell.capture.intake.sheet;

import castwell.analysis.wording.Phrase;
import castwell.capture.command.Refused;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.ToIntFunction;

/** Gathers what is wrong with a sheet, so that all of it can be mended at once. */
public final class Complaints {
  private final List<BadLine> lines = new ArrayList<>();

  /** Does something with each of them; one that can't be done doesn't keep the others waiting. */
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
   * @throws SheetRefused when there was any
   */
  public void raise(String source) {
    if (!lines.isEmpty()) {
      lines.sort(Comparator.comparingInt(BadLine::line));
      throw new SheetRefused(Phrase.of("sheet.bad_lines", lines.size(), source), lines);
    }
  }
}
