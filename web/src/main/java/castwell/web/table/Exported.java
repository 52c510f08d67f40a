package castwell.web.table;

import castwell.capture.store.Figures.ExportedFigure;
import castwell.capture.store.RawFacts.ExportedEdge;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import castwell.capture.view.Columns;
import castwell.capture.view.rack.RackColumns;
import castwell.capture.view.shot.EdgeView;
import castwell.capture.view.shot.FigureView;
import castwell.capture.view.shot.ShotView;
import castwell.capture.view.shot.ShotViews;
import castwell.capture.view.station.BudgetView;
import castwell.capture.view.station.StationBudget;
import castwell.web.text.Speech;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** The tables that can be exported. */
public enum Exported {
  shots,
  edges,
  figures,
  bows,
  arrows,
  force_draw,
  budget;

  private static final Instant FOR_GOOD = Instant.ofEpochMilli(Long.MAX_VALUE);

  @Override
  public String toString() {
    return name().replace('_', '-');
  }

  /** Whether the table can be narrowed to one station. The rack belongs to all of them. */
  public boolean isOfShots() {
    return this == shots || this == edges || this == figures || this == budget;
  }

  /** By the gates as they stand for good. */
  private static List<BudgetView> budget(Transaction t, String station) {
    return StationBudget.of(t, station, FOR_GOOD).stream()
        .flatMap(budget -> budget.rows().stream())
        .toList();
  }

  /**
   * @param station empty for all stations
   */
  public Table<?> table(Optional<String> station, ZoneId zone) {
    return switch (this) {
      case shots -> {
        ShotViews views = new ShotViews(zone, Speech.TRADE);
        yield new Table<>(
            Columns.of(ShotView.class),
            (t, row) -> {
              Consumer<Shot> shot = s -> row.accept(views.of(s));
              station.ifPresentOrElse(s -> t.shots().each(s, shot), () -> t.shots().each(shot));
            });
      }
      case edges ->
          new Table<>(
              Columns.of(EdgeView.class),
              (t, row) -> {
                Consumer<ExportedEdge> edge = e -> row.accept(EdgeView.of(e));
                station.ifPresentOrElse(s -> t.raw().each(s, edge), () -> t.raw().each(edge));
              });
      case figures ->
          new Table<>(
              Columns.of(FigureView.class),
              (t, row) -> {
                Consumer<ExportedFigure> figure = f -> row.accept(FigureView.of(f));
                station.ifPresentOrElse(
                    s -> t.figures().each(s, figure), () -> t.figures().each(figure));
              });
      case bows ->
          new Table<>(
              RackColumns.bows(zone),
              (t, row) ->
                  t.rack().bowNames().forEach(bow -> t.rack().states(bow.id()).forEach(row)));
      case arrows -> new Table<>(RackColumns.ARROWS, (t, row) -> t.rack().arrows().forEach(row));
      case force_draw ->
          new Table<>(RackColumns.forceDraw(zone), (t, row) -> t.forceDraws().each(row));
      case budget ->
          new Table<>(
              Columns.of(BudgetView.class),
              (t, row) ->
                  station
                      .map(List::of)
                      .orElseGet(() -> t.calibrations().stations())
                      .forEach(name -> budget(t, name).forEach(row)));
    };
  }
}
