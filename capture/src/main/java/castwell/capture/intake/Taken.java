package castwell.capture.intake;

import java.util.List;

/**
 * What became of a sheet.
 *
 * @param taken how many shots, bow states, arrows or curves are new, those set aside among them
 * @param already how many were there as they are
 * @param notRead headings that aren't ours, each with what it may be a slip for
 */
public record Taken(What what, int taken, int setAside, int already, List<String> notRead) {

  public String sentence() {
    return switch (what) {
      case SHOTS ->
          "%s taken in, %d set aside, %d already there: castwell report bow NAME says what they mean."
              .formatted(counted("shot"), setAside, already);
      case BOWS -> counted("bow state") + others();
      case ARROWS -> counted("arrow") + others();
      case FORCE_DRAW -> counted("force-draw curve") + others();
    };
  }

  private String counted(String thing) {
    return "%d %s%s".formatted(taken, thing, taken == 1 ? "" : "s");
  }

  private String others() {
    return " taken in, %d already there.".formatted(already);
  }
}
