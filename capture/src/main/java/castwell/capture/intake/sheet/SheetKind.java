package castwell.capture.intake.sheet;

import static castwell.capture.intake.sheet.SheetColumn.measured;
import static castwell.capture.intake.sheet.SheetColumn.words;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measure;
import castwell.capture.measure.UnitFamily;
import castwell.capture.view.Column;
import castwell.capture.view.Columns;
import castwell.capture.view.shot.ShotView;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The kinds of sheet that can be taken in, and what each may contain. */
public enum SheetKind {
  SHOTS(
      "shots",
      words("bow").must(),
      words("arrow").must(),
      measured("speed", UnitFamily.SPEED, "fps").must(),
      words("fired_at"),
      words("session"),
      words("counts"),
      words("note"),
      words("shot_id"),
      words("station"),
      words("end"),
      measured("speed_u_own", UnitFamily.SPEED, "fps"),
      measured("speed_u_common", UnitFamily.SPEED, "fps"),
      words("judged_by"),
      words("reason")),
  BOWS(
      "bows",
      BowMeasure.values(),
      words("bow").must(),
      words("state_on").must(),
      measured("draw_weight", UnitFamily.FORCE, "lb").must(),
      measured("draw_length", UnitFamily.LENGTH, "in").must(),
      words("done")),
  ARROWS(
      "arrows",
      ArrowMeasure.values(),
      words("arrow").must(),
      measured("mass", UnitFamily.MASS, "gr").must()),
  FORCE_DRAW(
      "force-draw",
      words("bow").must(),
      words("state_on").must(),
      measured("draw_length", UnitFamily.LENGTH, "in").must(),
      measured("draw_force", UnitFamily.FORCE, "lb").must(),
      measured("let_down", UnitFamily.FORCE, "lb"));

  private final String word;
  private final List<SheetColumn> columns;

  SheetKind(String word, SheetColumn... columns) {
    this(word, new Measure[0], columns);
  }

  SheetKind(String word, Measure[] measures, SheetColumn... columns) {
    this.word = word;
    this.columns =
        Stream.concat(Stream.of(columns), Stream.of(measures).map(SheetColumn::of)).toList();
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
