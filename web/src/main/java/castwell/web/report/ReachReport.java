package castwell.web.report;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;

import castwell.analysis.bow.FitAdvice;
import castwell.analysis.bow.Reach;
import castwell.analysis.bow.Target;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellSummary;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.unit.Units;
import castwell.capture.daemon.Refused;
import castwell.capture.daemon.Refused.Why;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The least arrow for every bow that carries what served before. */
public final class ReachReport {
  private static final List<ReportColumn> BOWS =
      List.of(
          ReportColumn.text("bow", "bow"),
          ReportColumn.text("verdict", "reaches it"),
          new ReportColumn("mass_gr", "least mass gr", 0),
          new ReportColumn("ci95_gr", "95 % gr", 0),
          new ReportColumn("grains_per_pound", "gr/lb", 1));

  /** No arrow that one would shoot. */
  private static final double HEAVY_GPP = 20;

  private static final String CHECK_RULES =
      "Momentum and energy are yardsticks, not permission: check your own region's rules, and take a licensed course.";

  /** What an arrow should carry: typed, or what a bow gives an arrow. */
  public sealed interface Wanted {
    /**
     * In trade units, one of them given.
     *
     * @throws Refused otherwise
     */
    static Wanted of(
        Optional<Double> momentumSlugFps,
        Optional<Double> energyFtlbf,
        Optional<String> likeBow,
        Optional<String> likeArrow,
        Yardstick yardstick) {
      boolean like = likeBow.isPresent() || likeArrow.isPresent();
      long ways =
          Stream.of(momentumSlugFps.isPresent(), energyFtlbf.isPresent(), like)
              .filter(way -> way)
              .count();
      if (ways != 1 || likeBow.isPresent() != likeArrow.isPresent()) {
        throw new Refused(
            Why.INVALID,
            "Say what to reach in one way: a momentum, an energy, or like a bow with an arrow.");
      }
      if (like) {
        return new Like(likeBow.get(), likeArrow.get(), yardstick);
      }
      double number = momentumSlugFps.or(() -> energyFtlbf).orElseThrow();
      if (!(number > 0 && Double.isFinite(number))) {
        throw new Refused(Why.INVALID, "What to reach lies above 0, not at %s.".formatted(number));
      }
      return momentumSlugFps.isPresent()
          ? new Momentum(number * NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND)
          : new KineticEnergy(number * JOULES_PER_FOOT_POUND);
    }
  }

  public record KineticEnergy(double joules) implements Wanted {}

  public record Momentum(double newtonSeconds) implements Wanted {}

  public record Like(String bow, String arrow, Yardstick yardstick) implements Wanted {}

  private final Shelf shelf;
  private final List<Cell> cells;

  private ReachReport(Transaction t, ZoneId zone) {
    this.shelf = new Shelf(t, zone);
    this.cells = shelf.cells().all();
  }

  public static Report of(Transaction t, ZoneId zone, Wanted wanted) {
    return new ReachReport(t, zone).report(wanted);
  }

  private Report report(Wanted wanted) {
    Target target = target(wanted);
    List<Map<String, Object>> rows = new ArrayList<>();
    List<String> unknown = new ArrayList<>();
    for (Shelf.Now bow : shelf.now(cells)) {
      bow.cells()
          .virtualMass()
          .filter(model -> Double.isFinite(model.energyJ().standardUncertainty()))
          .ifPresentOrElse(
              model -> rows.add(row(bow.state(), Reach.of(model, target, Trade.COVERAGE))),
              () -> unknown.add(bow.state().bow()));
    }
    List<String> sentences = sentences(wanted, target, rows, unknown);
    return new Report(
        sentences,
        List.of(new ReportTable("Least arrow", BOWS, rows)),
        new Fields()
            .put("sentences", sentences)
            .put("target", target(target))
            .put("reach", rows)
            .put("left_out", unknown)
            .map());
  }

  private Target target(Wanted wanted) {
    if (wanted instanceof KineticEnergy energy) {
      return new Target.KineticEnergy(Quantity.exact(energy.joules()));
    }
    if (wanted instanceof Momentum momentum) {
      return new Target.Momentum(Quantity.exact(momentum.newtonSeconds()));
    }
    Like like = (Like) wanted;
    CellSummary shot = shot(like);
    return like.yardstick() == Yardstick.energy
        ? new Target.KineticEnergy(shot.kineticEnergyJ())
        : new Target.Momentum(shot.momentumNs());
  }

  /** The bow's shots with that arrow as it is now. */
  private CellSummary shot(Like like) {
    Rack.Named bow = shelf.bow(like.bow());
    String state = shelf.name(shelf.now(bow));
    return cells.stream()
        .filter(cell -> cell.name().bow().equals(bow.name()))
        .filter(cell -> cell.name().state().equals(state))
        .filter(cell -> cell.name().arrow().equalsIgnoreCase(like.arrow()))
        .filter(cell -> cell.shots().size() > 1)
        .reduce((first, second) -> second)
        .map(CellSummary::of)
        .orElseThrow(
            () ->
                new Refused(
                    Why.NOT_FOUND,
                    "%s hasn't shot %s twice as it is now: shoot it, or name another arrow."
                        .formatted(bow.name(), like.arrow())));
  }

  private static Map<String, Object> row(BowState state, Reach reach) {
    Double grains =
        reach.massKg().isPresent()
            ? Trade.in(KILOGRAMS_PER_GRAIN, reach.massKg().getAsDouble())
            : null;
    Double gpp =
        grains == null
            ? null
            : (Double) Units.grainsPerPound(reach.massKg().getAsDouble(), state.drawWeightN());
    return new Fields()
        .put("bow", state.bow())
        .put("verdict", verdict(reach, gpp))
        .put("mass_gr", grains)
        .put("ci95_gr", Trade.interval(KILOGRAMS_PER_GRAIN, reach.intervalKg()))
        .put("grains_per_pound", gpp)
        .map();
  }

  private static String verdict(Reach reach, Double gpp) {
    if (reach.massKg().isEmpty()) {
      return Double.isInfinite(reach.intervalKg().low()) ? "never" : "never, but not surely";
    }
    if (Double.isInfinite(reach.intervalKg().high())) {
      return "perhaps never";
    }
    if (gpp > HEAVY_GPP) {
      return "only with an arrow beyond 20 gr/lb";
    }
    return gpp < FitAdvice.LEAST_GPP ? "yes, but an arrow below 8 gr/lb" : "yes";
  }

  private static Map<String, Object> target(Target target) {
    boolean energy = target instanceof Target.KineticEnergy;
    double unit = energy ? JOULES_PER_FOOT_POUND : NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;
    return new Fields()
        .put("yardstick", energy ? "energy" : "momentum")
        .put("unit", energy ? "ft lbf" : "slug ft/s")
        .put("value", Trade.value(unit, target.wanted()))
        .put("ci95", Trade.ci95(unit, target.wanted()))
        .map();
  }

  private static List<String> sentences(
      Wanted wanted, Target target, List<Map<String, Object>> rows, List<String> unknown) {
    List<String> sentences = new ArrayList<>();
    boolean energy = target instanceof Target.KineticEnergy;
    String what =
        energy
            ? Trade.said(JOULES_PER_FOOT_POUND, "ft lbf", 1, target.wanted())
            : Trade.said(NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND, "slug ft/s", 3, target.wanted());
    String from =
        wanted instanceof Like like ? ", what %s gives %s".formatted(like.bow(), like.arrow()) : "";
    long reaching =
        rows.stream().filter(row -> ((String) row.get("verdict")).startsWith("yes")).count();
    sentences.add(
        "%d of %d bows reach %s of %s%s."
            .formatted(reaching, rows.size(), what, energy ? "energy" : "momentum", from));
    if (!unknown.isEmpty()) {
      sentences.add(
          "Can't tell for %s: too few shots or masses.".formatted(String.join(", ", unknown)));
    }
    sentences.add(CHECK_RULES);
    return sentences;
  }
}
