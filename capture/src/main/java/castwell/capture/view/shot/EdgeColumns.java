package castwell.capture.view.shot;

import castwell.capture.store.RawFacts.ExportedEdge;
import castwell.capture.view.Column;
import castwell.capture.view.Column.Type;
import java.util.List;
import java.util.Optional;

/** The raw edges, as the boards stamped them. */
public final class EdgeColumns {
  public static final List<Column<ExportedEdge>> COLUMNS =
      List.of(
          new Column<>("device", Type.STRING, "", "the board's name", e -> Optional.of(e.device())),
          new Column<>(
              "series",
              Type.INTEGER,
              "",
              "2 and on when the board's name came again with other edges under known numbers",
              e -> Optional.of(e.series())),
          new Column<>(
              "boot",
              Type.INTEGER,
              "",
              "the board's count of its starts",
              e -> Optional.of(e.boot())),
          new Column<>(
              "edge", Type.INTEGER, "", "its number in that boot", e -> Optional.of(e.number())),
          new Column<>(
              "gate", Type.STRING, "", "A nearer the bow, B farther", e -> Optional.of(e.gate())),
          new Column<>(
              "kind",
              Type.STRING,
              "",
              "B blocked, C clear, G two edges in one stamp",
              e -> Optional.of(e.kind())),
          new Column<>(
              "ticks",
              Type.INTEGER,
              "tick",
              "the board's 32-bit counter, wrapping",
              e -> Optional.of(e.ticks())),
          new Column<>(
              "late",
              Type.INTEGER,
              "tick",
              "the most by which the stamp may be late",
              e -> Optional.of(e.late())),
          new Column<>("shot_id", Type.STRING, "", "the passage it is part of", e -> e.shotId()),
          new Column<>("station", Type.STRING, "", "where its gates stand", e -> e.station()));

  private EdgeColumns() {}
}
