package castwell.web.table;

import castwell.capture.view.rack.RackColumns;
import castwell.capture.view.shot.EdgeColumns;
import castwell.capture.view.shot.FigureColumns;
import castwell.capture.view.shot.ShotColumns;
import castwell.web.text.Speech;
import java.time.ZoneId;
import java.util.Optional;

/** What can be exported. */
public enum Exported {
  shots,
  edges,
  figures,
  bows,
  arrows,
  force_draw;

  @Override
  public String toString() {
    return name().replace('_', '-');
  }

  /** Whether it can be narrowed to a station; the rack is everybody's. */
  public boolean isOfShots() {
    return this == shots || this == edges || this == figures;
  }

  /**
   * @param station empty for everywhere
   */
  public Table<?> table(Optional<String> station, ZoneId zone) {
    return switch (this) {
      case shots ->
          new Table<>(
              new ShotColumns(zone, Speech.TRADE).columns(),
              (t, row) ->
                  station.ifPresentOrElse(s -> t.shots().each(s, row), () -> t.shots().each(row)));
      case edges ->
          new Table<>(
              EdgeColumns.COLUMNS,
              (t, row) ->
                  station.ifPresentOrElse(s -> t.raw().each(s, row), () -> t.raw().each(row)));
      case figures ->
          new Table<>(
              FigureColumns.COLUMNS,
              (t, row) ->
                  station.ifPresentOrElse(
                      s -> t.figures().each(s, row), () -> t.figures().each(row)));
      case bows ->
          new Table<>(
              RackColumns.bows(zone),
              (t, row) ->
                  t.rack().bowNames().forEach(bow -> t.rack().states(bow.id()).forEach(row)));
      case arrows -> new Table<>(RackColumns.ARROWS, (t, row) -> t.rack().arrows().forEach(row));
      case force_draw ->
          new Table<>(RackColumns.forceDraw(zone), (t, row) -> t.forceDraws().each(row));
    };
  }
}
