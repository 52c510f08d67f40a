package castwell.web.report.reach;

import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.FitAdvice;
import castwell.analysis.bow.Reach;
import castwell.analysis.bow.Target;
import castwell.analysis.cell.CellSums;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import castwell.analysis.uncertainty.TMixture;
import castwell.analysis.unit.Units;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.web.report.AnyDay;
import castwell.web.report.BowCells;
import castwell.web.report.ReportFormat;
import castwell.web.report.SpeedNote;
import castwell.web.report.Trade;
import castwell.web.report.reach.ReachReport.KineticEnergy;
import castwell.web.report.reach.ReachReport.Like;
import castwell.web.report.reach.ReachReport.Momentum;
import castwell.web.report.reach.ReachReport.Wanted;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What every bow needs to reach what is wanted.
 *
 * @param bows those that a curve tells of
 * @param unknown the names of the others
 */
public record Reached(Wanted wanted, Target target, List<Bow> bows, List<String> unknown) {
  /** No arrow that one would shoot. */
  private static final double HEAVY_GPP = 20;

  /** One bow as it is now, with the least arrow. */
  public record Bow(BowState state, BowSums cells, AnyDay anyDay, Reach reach) {
    /** Of the least arrow; empty where none reaches it, and where any arrow does. */
    public OptionalDouble leastKg() {
      double kg = reach.massKg().orElse(0);
      return kg > 0 ? OptionalDouble.of(kg) : OptionalDouble.empty();
    }

    /** Open where none reaches it, and where any arrow does. */
    public Interval leastIntervalKg() {
      Interval interval = reach.intervalKg();
      return new Interval(
          interval.low() > 0 ? interval.low() : Double.NEGATIVE_INFINITY,
          interval.high() > 0 ? interval.high() : Double.POSITIVE_INFINITY);
    }

    /** Whether the least arrow is far from all that were shot. */
    public boolean isBeyondArrows() {
      return reach.massKg().isPresent()
          && anyDay.curve().isBeyondArrows(reach.massKg().getAsDouble());
    }

    /** Of the least arrow; empty where that is. */
    public OptionalDouble gpp() {
      OptionalDouble kg = leastKg();
      return kg.isPresent()
          ? OptionalDouble.of(Units.grainsPerPound(kg.getAsDouble(), state.drawWeightN()))
          : OptionalDouble.empty();
    }

    public Reachability verdict() {
      if (reach.massKg().isEmpty()) {
        return Double.isInfinite(reach.intervalKg().low())
            ? Reachability.NEVER
            : Reachability.NEVER_UNSURE;
      }
      if (Double.isInfinite(reach.intervalKg().high())) {
        return Reachability.PERHAPS_NEVER;
      }
      double gpp = gpp().orElse(0);
      if (gpp > HEAVY_GPP) {
        return Reachability.ONLY_HEAVY;
      }
      return gpp < FitAdvice.LEAST_GPP ? Reachability.YES_LIGHT : Reachability.YES;
    }
  }

  public static Reached of(Transaction t, ZoneId zone, Wanted wanted) {
    BowCells bowCells = new BowCells(t, zone);
    Target target = target(bowCells, wanted);
    List<Bow> bows = new ArrayList<>();
    List<String> unknown = new ArrayList<>();
    for (BowCells.Now bow : bowCells.now()) {
      bow.anyDay()
          .ifPresentOrElse(
              known ->
                  bows.add(
                      new Bow(
                          bow.state(),
                          bow.cells(),
                          known,
                          known.curve().reach(target, Trade.COVERAGE))),
              () -> unknown.add(bow.state().bow()));
    }
    return new Reached(wanted, target, List.copyOf(bows), List.copyOf(unknown));
  }

  /** The answer first, the caution last. */
  public List<String> sentences(Transaction t, ReportFormat format) {
    return SpeedNote.ofBows(bows.stream().map(Bow::cells))
        .in(ReachReport.sentences(this, format), t, format);
  }

  private static Target target(BowCells bowCells, Wanted wanted) {
    if (wanted instanceof KineticEnergy energy) {
      return new Target.KineticEnergy(Quantity.exact(energy.joules()));
    }
    if (wanted instanceof Momentum momentum) {
      return new Target.Momentum(Quantity.exact(momentum.newtonSeconds()));
    }
    Like like = (Like) wanted;
    double massKg = shotTwice(bowCells, like).massKg();
    BowState state = bowCells.now(bowCells.bow(like.bow()));
    TMixture speed =
        AnyDay.of(bowCells.season(), state, bowCells.name(state))
            .orElseThrow()
            .curve()
            .logSpeed(massKg);
    return like.yardstick() == Yardstick.energy
        ? new Target.KineticEnergy(carried(massKg / 2 * Math.exp(2 * speed.value()), 2, speed))
        : new Target.Momentum(carried(massKg * Math.exp(speed.value()), 1, speed));
  }

  /** What the bow gives that arrow on any day. */
  private static Quantity carried(double value, int power, TMixture speed) {
    double u = value * power * speed.standardUncertainty();
    Source source = new Source("days and shots", Kind.OWN, speed.degreesOfFreedom());
    return Quantity.of(value, u, source);
  }

  /** The bow's shots with that arrow as it is now. */
  private static CellSums shotTwice(BowCells bowCells, Like like) {
    Rack.Named bow = bowCells.bow(like.bow());
    String state = bowCells.name(bowCells.now(bow));
    return bowCells.ledger().ofBow(bow, Integer.MAX_VALUE).stream()
        .filter(cell -> cell.name().state().equals(state))
        .filter(cell -> cell.name().arrow().equalsIgnoreCase(like.arrow()))
        .filter(cell -> cell.n() > 1)
        .reduce((first, second) -> second)
        .orElseThrow(
            () -> Refused.of(Why.NOT_FOUND, "refused.not_shot_twice", bow.name(), like.arrow()));
  }
}
