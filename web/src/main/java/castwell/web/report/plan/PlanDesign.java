package castwell.web.report.plan;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP;

import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.FitAdvice;
import castwell.analysis.compare.MassChoice;
import castwell.analysis.compare.PooledSpread;
import castwell.analysis.compare.SessionDesign;
import castwell.analysis.compare.ShotOrder;
import castwell.analysis.compare.ShotOrder.Turn;
import castwell.analysis.statistic.TPower;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.season.KnownSeason;
import castwell.capture.season.SeasonLedger;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.web.report.BowCells;
import castwell.web.report.ReportFormat;
import castwell.web.report.SpeedNote;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is to be shot to see what is wished for.
 *
 * @param bows the first is the one to be reworked
 * @param choice of arrow masses, where they are chosen by us
 * @param own the bow's own spread
 * @param sdMps the spread that was reckoned with
 * @param exactShots with each arrow before and after within one session, before rounding up
 * @param days what it takes over days
 * @param shot what the bow shot as it is now
 */
public record PlanDesign(
    Wish wish,
    List<String> bows,
    List<String> arrows,
    Optional<MassChoice> choice,
    PooledSpread own,
    double sdMps,
    Size size,
    double exactShots,
    OverDays days,
    BowSums shot) {
  static final double ALPHA = 0.05;
  static final int MOST_BLOCKS = 60;

  /** So that an arrow of just 8 grains per pound is one. */
  private static final double ROUNDING = 1e-9;

  public static PlanDesign of(Transaction t, ZoneId zone, Wish wish) {
    wish.check(ALPHA);
    BowCells bowCells = new BowCells(t, zone);
    List<Rack.Named> bows = wish.bows().stream().map(bowCells::bow).toList();
    BowState state = bowCells.now(bows.get(0));
    PooledSpread own = bowCells.ledger().spread(state);
    double sd = sd(wish, own);
    Optional<KnownSeason> season = SeasonLedger.of(t, zone);
    Size size = Size.of(wish, state.bow(), season);
    // Within one session its day is the same before and after, so that no control is needed.
    double needed = TPower.shotsEach(2, size.mps(), sd, ALPHA, wish.power());
    Optional<MassChoice> choice =
        wish.arrows().isEmpty() ? choice(t, bowCells, state, sd, whole(needed)) : Optional.empty();
    List<String> arrows = arrows(t, wish, state, choice).stream().map(Rack.Arrow::name).toList();
    int others = bows.size() > 1 ? bows.size() - 1 : t.rack().bowNames().size() - 1;
    return new PlanDesign(
        wish,
        bows.stream().map(Rack.Named::name).toList(),
        arrows,
        choice,
        own,
        sd,
        size,
        needed,
        OverDays.of(wish, size, sd, season, arrows.size(), others),
        new BowSums(state.bow(), bowCells.ledger().of(state)));
  }

  /** Puts what its speeds are into sentences, of which the first is the answer. */
  List<String> speedNote(List<String> sentences, Transaction t, ReportFormat format) {
    return SpeedNote.ofBows(Stream.of(shot)).in(sentences, t, format);
  }

  /** With each arrow, before and after, within one session. */
  int shots() {
    return whole(exactShots);
  }

  private static int whole(double shots) {
    return (int) Math.ceil(shots - 1e-9);
  }

  /** How many shots of each arrow from each bow the order has: those of one session. */
  int blocks() {
    return days.asked().map(SessionDesign::shots).orElse(shots());
  }

  public List<Turn> order() {
    return ShotOrder.of(bows, arrows, Math.min(blocks(), MOST_BLOCKS), wish.seed());
  }

  private static double sd(Wish wish, PooledSpread own) {
    if (wish.sdMps().isPresent()) {
      return wish.sdMps().getAsDouble();
    }
    if (!(own.sdMps() > 0)) {
      throw Refused.of(Why.INVALID, "refused.no_scatter", wish.bows().get(0));
    }
    return own.sdMps();
  }

  private static List<Rack.Arrow> arrows(
      Transaction t, Wish wish, BowState state, Optional<MassChoice> chosen) {
    List<Rack.Arrow> rack = t.rack().arrows();
    if (!wish.arrows().isEmpty()) {
      return wish.arrows().stream()
          .map(
              name ->
                  rack.stream()
                      .filter(arrow -> arrow.name().equalsIgnoreCase(name))
                      .findFirst()
                      .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_arrow", name)))
          .toList();
    }
    return chosen
        .map(
            choice ->
                choice.massesKg().stream()
                    .map(
                        kg -> rack.stream().filter(a -> a.massKg() == kg).findFirst().orElseThrow())
                    .toList())
        .orElseGet(() -> heavyEnough(state, rack));
  }

  private static List<Rack.Arrow> heavyEnough(BowState state, List<Rack.Arrow> rack) {
    List<Rack.Arrow> arrows =
        rack.stream().filter(arrow -> arrow.massKg() >= leastKg(state) * (1 - ROUNDING)).toList();
    if (arrows.isEmpty()) {
      throw Refused.of(Why.INVALID, "refused.no_heavy_arrow", state.bow());
    }
    return arrows;
  }

  private static double leastKg(BowState state) {
    return FitAdvice.LEAST_GPP * KILOGRAMS_PER_NEWTON_OF_ONE_GPP * state.drawWeightN();
  }

  private static Optional<MassChoice> choice(
      Transaction t, BowCells bowCells, BowState state, double sd, int shots) {
    return new BowSums(state.bow(), bowCells.ledger().of(state))
        .virtualMass()
        .flatMap(
            m ->
                MassChoice.of(
                    t.rack().arrows().stream().map(Rack.Arrow::massKg).toList(),
                    leastKg(state),
                    m.energyJ().value(),
                    Math.max(0, m.virtualMassKg().value()),
                    sd,
                    shots));
  }
}
