package castwell.capture.intake;

import castwell.analysis.wording.Phrase;
import castwell.capture.intake.sheet.SheetKind;
import java.util.List;

/**
 * What became of a sheet.
 *
 * @param taken how many shots, bow states, arrows or curves are new, including those that were set
 *     aside
 * @param already how many were there and stay as they are
 * @param notRead headings that aren't ours, each with what it may be a slip for
 */
public record Taken(SheetKind kind, int taken, int setAside, int already, List<String> notRead) {

  public Phrase phrase() {
    return switch (kind) {
      case SHOTS -> Phrase.of("sheet.shots", taken, setAside, already);
      case BOWS -> Phrase.of("sheet.bows", taken, already);
      case ARROWS -> Phrase.of("sheet.arrows", taken, already);
      case FORCE_DRAW -> Phrase.of("sheet.force_draw", taken, already);
    };
  }
}
