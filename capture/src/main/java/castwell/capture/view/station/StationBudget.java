package castwell.capture.view.station;

import castwell.analysis.speed.Budget;
import castwell.analysis.speed.Budget.Share;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.TickRate;
import castwell.analysis.uncertainty.Kind;
import castwell.capture.store.Calibrations;
import castwell.capture.store.RawFacts.Timing;
import castwell.capture.store.Transaction;
import castwell.capture.view.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What makes a speed uncertain at a station's gates as they stand, with the board's rate as known.
 */
public record StationBudget(String station, Calibration gates, Budget budget) {

  /** Empty of a station without gates. */
  public static Optional<StationBudget> of(Transaction t, String station, Instant at) {
    return t.calibrations()
        .inForce(station, at)
        .map(Calibrations.Entry::calibration)
        .map(gates -> new StationBudget(station, gates, Budget.of(gates, rate(t, station, gates))));
  }

  /** As the last shot was read; before any, as boards are usually made. */
  private static TickRate rate(Transaction t, String station, Calibration gates) {
    return t.shots()
        .last(station)
        .filter(shot -> shot.byGates().isPresent())
        .map(shot -> shot.figure().conditions().rate())
        .orElseGet(() -> TickRate.nominal(Timing.UNTOLD.hz(), gates.oscillator()));
  }

  /** The largest first, then all of each kind, and all. */
  public List<BudgetView> rows() {
    List<BudgetView> rows = new ArrayList<>();
    for (Share share : budget.shares()) {
      BudgetSource source = BudgetSource.of(share);
      rows.add(
          row(
              source.word(),
              Optional.of(share.kind()),
              share.relativeU(),
              Optional.of(source.setting()).filter(setting -> !setting.isEmpty())));
    }
    for (Kind kind : Kind.values()) {
      rows.add(
          row(
              "all-" + Words.of(kind),
              Optional.of(kind),
              budget.relativeU(kind),
              Optional.empty()));
    }
    rows.add(row("all", Optional.empty(), budget.relativeU(), Optional.empty()));
    return rows;
  }

  private BudgetView row(
      String source, Optional<Kind> kind, double relativeU, Optional<String> setting) {
    return new BudgetView(
        station,
        source,
        kind.map(Words::of),
        100 * relativeU,
        relativeU * budget.speedMps(),
        budget.speedMps(),
        setting,
        gates.isMeasured());
  }
}
