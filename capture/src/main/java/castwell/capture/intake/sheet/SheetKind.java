package castwell.capture.intake.sheet;

import static castwell.capture.intake.sheet.SheetColumn.measured;
import static castwell.capture.intake.sheet.SheetColumn.words;

import castwell.capture.view.Column;
import castwell.capture.view.Columns;
import castwell.capture.view.shot.ShotView;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** The kinds of sheet that can be taken in, and what each may contain. */
public enum SheetKind {
  SHOTS(
      "shots",
      words("bow").must(),
      words("arrow").must(),
      measured("speed", Measure.SPEED, "fps").must(),
      words("fired_at"),
      words("session"),
      words("counts"),
      words("note"),
      words("shot_id"),
      words("station"),
      words("end"),
      measured("speed_u_own", Measure.SPEED, "fps"),
      measured("speed_u_common", Measure.SPEED, "fps"),
      words("judged_by"),
      words("reason")),
  BOWS(
      "bows",
      words("bow").must(),
      words("state_on").must(),
      measured("draw_weight", Measure.FORCE, "lb").must(),
      measured("draw_length", Measure.LENGTH, "in").must(),
      measured("nock_to_nock", Measure.LENGTH, "in"),
      measured("string_follow", Measure.LENGTH, "in"),
      measured("brace_height", Measure.LENGTH, "in"),
      measured("mass", Measure.MASS, "lb"),
      words("wood"),
      measured("tip_width", Measure.LENGTH, "mm"),
      measured("string_mass", Measure.MASS, "gr"),
      words("done")),
  ARROWS(
      "arrows",
      words("arrow").must(),
      measured("mass", Measure.MASS, "gr").must(),
      measured("length", Measure.LENGTH, "in"),
      measured("diameter", Measure.LENGTH, "in"),
      words("point"),
      words("note")),
  FORCE_DRAW(
      "force-draw",
      words("bow").must(),
      words("state_on").must(),
      measured("draw_length", Measure.LENGTH, "in").must(),
      measured("draw_force", Measure.FORCE, "lb").must(),
      measured("let_down", Measure.FORCE, "lb"));

  private final String word;
  private final List<SheetColumn> columns;

  SheetKind(String word, SheetColumn... columns) {
    this.word = word;
    this.columns = List.of(columns);
  }

  /** The kind's name as people write it. */
  public String word() {
    return word;
  }

  @Override
  public String toString() {
    return word;
  }

  public List<SheetColumn> columns() {
    return columns;
  }

  /**
   * Columns of our own export that an import passes over in silence: they follow from the others.
   */
  Set<String> passedOver() {
    return this == SHOTS
        ? Columns.of(ShotView.class).stream().map(Column::name).collect(Collectors.toSet())
        : Set.of();
  }
}
