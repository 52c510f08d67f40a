package castwell.web.report.reach;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;
import static castwell.web.unit.Dimension.ENERGY;
import static castwell.web.unit.Dimension.MOMENTUM;

import castwell.analysis.bow.Target;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.reach.ReachReportView;
import castwell.capture.view.report.reach.ReachedView;
import castwell.capture.view.report.reach.TargetView;
import castwell.web.report.Report;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportTable;
import castwell.web.report.Trade;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The least arrow for every bow that carries what served before. */
public final class ReachReport {
  private static final List<ReportColumn<ReachedView>> BOWS =
      List.of(
          ReportColumn.text("bow", "bow", ReachedView::bow),
          ReportColumn.text("verdict", "reaches it", ReachedView::verdict),
          new ReportColumn<>("mass_gr", "least mass gr", 0, ReachedView::massGr),
          new ReportColumn<>("ci95_gr", "95 % gr", 0, ReachedView::ci95Gr),
          new ReportColumn<>("grains_per_pound", "gr/lb", 1, ReachedView::grainsPerPound),
          new ReportColumn<>("beyond_arrows", "by the curve", 0, ReachedView::beyondArrows));

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
        throw Refused.of(Why.INVALID, "refused.reach_what");
      }
      if (like) {
        return new Like(likeBow.get(), likeArrow.get(), yardstick);
      }
      double number = momentumSlugFps.or(() -> energyFtlbf).orElseThrow();
      if (!(number > 0 && Double.isFinite(number))) {
        throw Refused.of(Why.INVALID, "refused.reach_above", number);
      }
      return momentumSlugFps.isPresent()
          ? new Momentum(number * NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND)
          : new KineticEnergy(number * JOULES_PER_FOOT_POUND);
    }
  }

  public record KineticEnergy(double joules) implements Wanted {}

  public record Momentum(double newtonSeconds) implements Wanted {}

  public record Like(String bow, String arrow, Yardstick yardstick) implements Wanted {}

  private final Transaction t;
  private final Reached reached;

  private ReachReport(Transaction t, Reached reached) {
    this.t = t;
    this.reached = reached;
  }

  public static Report<ReachReportView> of(Transaction t, ZoneId zone, Wanted wanted) {
    return new ReachReport(t, Reached.of(t, zone, wanted)).report();
  }

  private Report<ReachReportView> report() {
    List<ReachedView> rows = reached.bows().stream().map(ReachReport::row).toList();
    List<String> sentences = reached.sentences(t, ReportFormat.TRADE);
    return new Report<>(
        sentences,
        List.of(new ReportTable<>("Least arrow", BOWS, rows)),
        new ReachReportView(sentences, target(reached.target()), rows, reached.unknown()));
  }

  private static ReachedView row(Reached.Bow bow) {
    OptionalDouble least = bow.leastKg();
    return new ReachedView(
        bow.state().bow(),
        bow.verdict().words(ReportFormat.TRADE),
        least.isPresent()
            ? Trade.in(KILOGRAMS_PER_GRAIN, least.getAsDouble())
            : OptionalDouble.empty(),
        Trade.interval(KILOGRAMS_PER_GRAIN, bow.leastIntervalKg()),
        bow.gpp(),
        bow.isBeyondArrows());
  }

  private static TargetView target(Target target) {
    boolean energy = target instanceof Target.KineticEnergy;
    double unit = energy ? JOULES_PER_FOOT_POUND : NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;
    return new TargetView(
        energy ? "energy" : "momentum",
        energy ? "ft lbf" : "slug ft/s",
        Trade.value(unit, target.wanted()),
        Trade.ci95(unit, target.wanted()));
  }

  static List<String> sentences(Reached reached, ReportFormat format) {
    Wanted wanted = reached.wanted();
    Target target = reached.target();
    List<String> unknown = reached.unknown();
    List<String> sentences = new ArrayList<>();
    boolean energy = target instanceof Target.KineticEnergy;
    String what =
        energy
            ? format.said(ENERGY, 1, target.wanted())
            : format.said(MOMENTUM, 3, target.wanted());
    long reaching = reached.bows().stream().filter(bow -> bow.verdict().isYes()).count();
    String key = "report.reach." + (energy ? "energy" : "momentum");
    sentences.add(
        wanted instanceof Like like
            ? format.say(
                key + "_like", reaching, reached.bows().size(), what, like.bow(), like.arrow())
            : format.say(key, reaching, reached.bows().size(), what));
    if (!unknown.isEmpty()) {
      sentences.add(format.say("report.reach.unknown", String.join(", ", unknown)));
    }
    if (reached.bows().stream().anyMatch(Reached.Bow::isBeyondArrows)) {
      sentences.add(format.say("report.reach.beyond_arrows"));
    }
    sentences.add(format.say("report.reach.check_rules"));
    return sentences;
  }
}
