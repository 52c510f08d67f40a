package castwell.web.report;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;

import castwell.analysis.bow.FitAdvice;
import castwell.analysis.compare.MassChoice;
import castwell.analysis.compare.PooledSpread;
import castwell.analysis.compare.ShotOrder;
import castwell.analysis.compare.ShotOrder.Turn;
import castwell.analysis.statistic.TPower;
import castwell.capture.daemon.Refused;
import castwell.capture.daemon.Refused.Why;
import castwell.capture.store.Rack;
import castwell.capture.store.Transaction;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** How many shots see a change, with which arrows, in which order. */
public final class PlanReport {
  private static final double ALPHA = 0.05;
  private static final int MOST_BLOCKS = 60;

  /** So that an arrow of just 8 grains per pound is one. */
  private static final double ROUNDING = 1e-9;

  private static final List<ReportColumn> COLUMNS =
      List.of(
          new ReportColumn("turn", "turn", 0),
          new ReportColumn("block", "block", 0),
          ReportColumn.text("bow", "bow"),
          ReportColumn.text("arrow", "arrow"));

  /**
   * What is planned.
   *
   * @param bows the first is the one to be reworked, the others are its controls
   * @param changeMps that should be seen
   * @param power how surely, between 0.05 and 1
   * @param sdMps one shot's scatter; from the bow's own shots where it isn't given
   * @param arrows by name; chosen by us where there are none
   * @param seed of the order
   */
  public record Wish(
      List<String> bows,
      double changeMps,
      double power,
      OptionalDouble sdMps,
      List<String> arrows,
      long seed) {}

  private final Shelf shelf;
  private final Wish wish;

  private PlanReport(Transaction t, ZoneId zone, Wish wish) {
    this.shelf = new Shelf(t, zone);
    this.wish = wish;
  }

  public static Report of(Transaction t, ZoneId zone, Wish wish) {
    return new PlanReport(t, zone, wish).report();
  }

  private Report report() {
    check();
    List<Rack.Named> bows = wish.bows().stream().map(shelf::bow).toList();
    Shelf.Stand stand = shelf.stand(shelf.now(bows.get(0)));
    PooledSpread own =
        PooledSpread.of(
            stand.sessions().stream().flatMap(session -> session.cells().stream()).toList());
    double sd = sd(own);
    int cells = bows.size() > 1 ? 4 : 2;
    double needed = TPower.shotsEach(cells, wish.changeMps(), sd, ALPHA, wish.power());
    int shots = (int) Math.ceil(needed - 1e-9);
    Optional<MassChoice> choice =
        wish.arrows().isEmpty() ? choice(stand, sd, shots) : Optional.empty();
    List<Rack.Arrow> arrows = arrows(stand, choice);
    List<Turn> order =
        ShotOrder.of(
            bows.stream().map(Rack.Named::name).toList(),
            arrows.stream().map(Rack.Arrow::name).toList(),
            Math.min(shots, MOST_BLOCKS),
            wish.seed());
    List<Map<String, Object>> rows = rows(order);
    List<String> sentences = sentences(cells, shots, sd, own, arrows, choice);
    return new Report(
        sentences,
        List.of(new ReportTable("Order", COLUMNS, rows)),
        new Fields()
            .put("sentences", sentences)
            .put("shots_per_cell", shots)
            .put("shots_per_cell_exact", needed)
            .put("cells_compared", cells)
            .put("change_fps", wish.changeMps() / METRES_PER_FOOT)
            .put("power", wish.power())
            .put("alpha", ALPHA)
            .put("sd_fps", sd / METRES_PER_FOOT)
            .put("sd_degrees_of_freedom", wish.sdMps().isPresent() ? null : own.degreesOfFreedom())
            .put("bows", bows.stream().map(Rack.Named::name).toList())
            .put("arrows", arrows.stream().map(Rack.Arrow::name).toList())
            .put("seed", wish.seed())
            .put("order", rows)
            .map());
  }

  private void check() {
    if (!(Math.abs(wish.changeMps()) > 0)) {
      throw new Refused(Why.INVALID, "The change to be seen can't be 0 ft/s: name a larger one.");
    }
    if (!(wish.power() > ALPHA && wish.power() < 1)) {
      throw new Refused(
          Why.INVALID, "A power lies between %s and 1, not at %s.".formatted(ALPHA, wish.power()));
    }
    if (wish.sdMps().isPresent() && !(wish.sdMps().getAsDouble() > 0)) {
      throw new Refused(Why.INVALID, "A shot's scatter is above 0 ft/s.");
    }
  }

  private double sd(PooledSpread own) {
    if (wish.sdMps().isPresent()) {
      return wish.sdMps().getAsDouble();
    }
    if (!(own.sdMps() > 0)) {
      throw new Refused(
          Why.INVALID,
          "%s's own shots don't tell a scatter yet: shoot an arrow a few times, or say what to take with sd_fps."
              .formatted(wish.bows().get(0)));
    }
    return own.sdMps();
  }

  private List<Rack.Arrow> arrows(Shelf.Stand stand, Optional<MassChoice> chosen) {
    List<Rack.Arrow> rack = shelf.transaction().rack().arrows();
    if (!wish.arrows().isEmpty()) {
      return wish.arrows().stream()
          .map(
              name ->
                  rack.stream()
                      .filter(arrow -> arrow.name().equalsIgnoreCase(name))
                      .findFirst()
                      .orElseThrow(
                          () ->
                              new Refused(
                                  Why.NOT_FOUND,
                                  "There is no arrow named %s: add it, or mend the name."
                                      .formatted(name))))
          .toList();
    }
    return chosen
        .map(
            choice ->
                choice.massesKg().stream()
                    .map(
                        kg -> rack.stream().filter(a -> a.massKg() == kg).findFirst().orElseThrow())
                    .toList())
        .orElseGet(() -> heavyEnough(stand, rack));
  }

  private static List<Rack.Arrow> heavyEnough(Shelf.Stand stand, List<Rack.Arrow> rack) {
    List<Rack.Arrow> arrows =
        rack.stream().filter(arrow -> arrow.massKg() >= leastKg(stand) * (1 - ROUNDING)).toList();
    if (arrows.isEmpty()) {
      throw new Refused(
          Why.INVALID,
          "No arrow of the rack has 8 grains per pound of %s: add one, or name arrows."
              .formatted(stand.state().bow()));
    }
    return arrows;
  }

  private static double leastKg(Shelf.Stand stand) {
    return FitAdvice.LEAST_GPP * KILOGRAMS_PER_NEWTON_OF_ONE_GPP * stand.state().drawWeightN();
  }

  private Optional<MassChoice> choice(Shelf.Stand stand, double sd, int shots) {
    return stand
        .cells()
        .virtualMass()
        .flatMap(
            m ->
                MassChoice.of(
                    shelf.transaction().rack().arrows().stream().map(Rack.Arrow::massKg).toList(),
                    leastKg(stand),
                    m.energyJ().value(),
                    Math.max(0, m.virtualMassKg().value()),
                    sd,
                    shots));
  }

  private static List<Map<String, Object>> rows(List<Turn> order) {
    List<Map<String, Object>> rows = new ArrayList<>();
    for (Turn turn : order) {
      rows.add(
          new Fields()
              .put("turn", rows.size() + 1)
              .put("block", turn.block())
              .put("bow", turn.bow())
              .put("arrow", turn.arrow())
              .map());
    }
    return rows;
  }

  private List<String> sentences(
      int cells,
      int shots,
      double sd,
      PooledSpread own,
      List<Rack.Arrow> arrows,
      Optional<MassChoice> choice) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "To see a change of %s ft/s with a chance of %s %%, shoot each arrow %d times before and %d after%s."
            .formatted(
                Trade.plain(Math.abs(wish.changeMps()) / METRES_PER_FOOT, 1),
                Trade.plain(100 * wish.power(), 0),
                shots,
                shots,
                cells == 4 ? ", with each bow, the control like the one reworked" : ""));
    sentences.add(
        "That takes a shot to scatter by %s ft/s%s, and is for one arrow alone: several arrows together see less."
            .formatted(
                Trade.plain(sd / METRES_PER_FOOT, 2),
                wish.sdMps().isPresent()
                    ? ""
                    : ", as your own did (%d degrees of freedom)"
                        .formatted(own.degreesOfFreedom())));
    if (cells == 2) {
      sentences.add(
          "Without a bow that stays as it is, the day can't be told from the rework: plan with a control.");
    }
    choice.ifPresent(
        c ->
            sentences.add(
                "With %s the energy would be known to +-%s ft lbf and the virtual mass to +-%s gr (one standard uncertainty)."
                    .formatted(
                        String.join(", ", arrows.stream().map(Rack.Arrow::name).toList()),
                        Trade.plain(c.precision().energySe() / JOULES_PER_FOOT_POUND, 2),
                        Trade.plain(c.precision().virtualMassSe() / KILOGRAMS_PER_GRAIN, 0))));
    if (shots > MOST_BLOCKS) {
      sentences.add("The order holds the first %d blocks.".formatted(MOST_BLOCKS));
    }
    return sentences;
  }
}
