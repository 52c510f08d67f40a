package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.bow.Reach;
import castwell.analysis.bow.Target;
import castwell.analysis.compare.Rework;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.Interval;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.StudentT;
import castwell.analysis.uncertainty.TMixture;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is told must agree with itself. */
class SeasonAnswersTest {
  private static final double MASS_KG = 500 * Units.KILOGRAMS_PER_GRAIN;
  private static final List<SeasonCell> CELLS = new Expected("rework").cells();
  private static final Season SEASON = Season.fit(CELLS, Priors.ASSUMED);
  private static final StateCurve AFTER = SEASON.state("after");
  private static final StateCurve BEFORE = SEASON.state("before");

  @Test
  void speedEnergyAndMomentumAreOneInterval() {
    Interval logs = AFTER.logSpeed(MASS_KG).interval(0.95);
    Estimate speed = AFTER.speedMps(MASS_KG, 0.95);
    assertThat(Math.log(speed.interval().low())).isCloseTo(logs.low(), within(1e-12));
    Estimate energy = AFTER.kineticEnergyJ(MASS_KG, 0.95);
    Estimate momentum = AFTER.momentumNs(MASS_KG, 0.95);
    assertThat(energy.interval().high())
        .isCloseTo(MASS_KG * Math.exp(2 * logs.high()) / 2, within(1e-9));
    assertThat(momentum.value()).isCloseTo(MASS_KG * speed.value(), within(1e-12));
  }

  /** v = sqrt(2 E / (m + K)), exactly. */
  @Test
  void energyAndVirtualMassGiveTheSpeed() {
    StateEnergy energy = AFTER.energy();
    double e = energy.energyJ(0.95).orElseThrow().value();
    double k = energy.virtualMassKg(0.95).orElseThrow().value();
    for (double kg : new double[] {0.02, 0.03, 0.05}) {
      assertThat(AFTER.speedMps(kg, 0.95).value())
          .isCloseTo(Math.sqrt(2 * e / (kg + k)), within(1e-9));
    }
  }

  @Test
  void castIsTheSpeedAtItsMassAndLessSureWithTheScale() {
    double weightN = 50 * Units.NEWTONS_PER_POUND;
    TMixture exact = AFTER.cast(10, weightN, 0);
    TMixture weighed = AFTER.cast(10, weightN, 0.02 * weightN);
    assertThat(exact.value()).isCloseTo(AFTER.logSpeed(MASS_KG).value(), within(1e-12));
    double step = 1e-4;
    double slope =
        (AFTER.logSpeed(MASS_KG * (1 + step)).value()
                - AFTER.logSpeed(MASS_KG * (1 - step)).value())
            / (2 * step);
    double more =
        Math.pow(weighed.standardUncertainty(), 2) - Math.pow(exact.standardUncertainty(), 2);
    assertThat(Math.sqrt(more)).isCloseTo(0.02 * Math.abs(slope), within(1e-7));
  }

  @Test
  void pValueAndIntervalAgree() {
    TMixture change = AFTER.lessThan(MASS_KG, BEFORE, MASS_KG);
    double p = change.pValue();
    assertThat(change.interval(1 - p).low()).isCloseTo(0, within(1e-9));
    assertThat(change.interval(1 - p * 1.01).contains(0)).isFalse();
    assertThat(change.interval(1 - p * 0.99).contains(0)).isTrue();
  }

  @Test
  void noChangeLargerThanTheFartherEndOfTheInterval() {
    Rework rework = new Rework(BEFORE, AFTER);
    double limit = rework.noChangeLargerThan(MASS_KG);
    Interval share = rework.share(MASS_KG).interval();
    assertThat(limit).isCloseTo(share.high(), within(1e-9));
    Rework back = new Rework(AFTER, BEFORE);
    // A change of so much upwards is this much downwards.
    assertThat(back.noChangeLargerThan(MASS_KG)).isCloseTo(limit / (1 + limit), within(1e-9));
    assertThat(back.change(MASS_KG).value())
        .isCloseTo(-rework.change(MASS_KG).value(), within(1e-12));
  }

  @Test
  void whatMovedIsToldByIntervalsThatAgreeWithHolm() {
    Rework.Moved moved = new Rework(BEFORE, AFTER).whatMoved().orElseThrow();
    assertThat(moved.energyJ().interval().contains(0)).isEqualTo(moved.energyP() >= 0.05);
    assertThat(moved.virtualMassKg().interval().contains(0))
        .isEqualTo(moved.virtualMassP() >= 0.05);
    double ratio = 1 + moved.energyJ().value() / Math.exp(BEFORE.energy().logEnergy().value());
    assertThat(Math.log(ratio))
        .isCloseTo(AFTER.energy().logEnergyLess(BEFORE.energy()).value(), within(1e-12));
  }

  @Test
  void virtualMassChangeHoldsZeroWithThatOfE() {
    for (double coverage : new double[] {0.5, 0.8, 0.9, 0.95}) {
      boolean byE = AFTER.energy().elasticityLess(BEFORE.energy()).interval(coverage).contains(0);
      Estimate k = AFTER.energy().virtualMassLessKg(BEFORE.energy(), coverage);
      assertThat(k.interval().contains(0)).isEqualTo(byE);
      assertThat(k.interval().contains(k.value())).isTrue();
    }
  }

  @Test
  void reachIsWhereTheBandMeetsTheTarget() {
    Target target = new Target.Momentum(Quantity.exact(2));
    Reach reach = AFTER.reach(target, 0.95);
    double low = reach.intervalKg().low();
    double high = reach.intervalKg().high();
    assertThat(AFTER.momentumNs(low, 0.95).interval().high()).isCloseTo(2, within(1e-8));
    assertThat(AFTER.momentumNs(high, 0.95).interval().low()).isCloseTo(2, within(1e-8));
    assertThat(AFTER.momentumNs(reach.massKg().orElseThrow(), 0.95).value())
        .isCloseTo(2, within(1e-8));
    Reach never = AFTER.reach(new Target.KineticEnergy(Quantity.exact(1000)), 0.95);
    assertThat(never.massKg()).isEmpty();
    assertThat(never.intervalKg().high()).isInfinite();
  }

  /** An error that all sessions share moves every speed by itself, and no difference. */
  @Test
  void sharedErrorsAddToSpeedsAndCancelInDifferences() {
    double[] shifts = new double[CELLS.size()];
    Arrays.fill(shifts, 0.004);
    Season shared = SEASON.sharing(List.of(shifts));
    double own = AFTER.logSpeed(MASS_KG).standardUncertainty();
    assertThat(shared.state("after").logSpeed(MASS_KG).standardUncertainty())
        .isCloseTo(Math.hypot(own, 0.004), within(1e-9));
    assertThat(
            shared
                .state("after")
                .lessThan(MASS_KG, shared.state("before"), MASS_KG)
                .standardUncertainty())
        .isCloseTo(AFTER.lessThan(MASS_KG, BEFORE, MASS_KG).standardUncertainty(), within(1e-9));
  }

  @Test
  void theOrderOfCellsIsOfNoAccount() {
    List<SeasonCell> turned = new ArrayList<>(CELLS);
    Collections.reverse(turned);
    TMixture other = Season.fit(turned, Priors.ASSUMED).state("after").logSpeed(MASS_KG);
    Interval told = AFTER.logSpeed(MASS_KG).interval(0.95);
    assertThat(other.interval(0.95).low()).isCloseTo(told.low(), within(1e-8));
    assertThat(other.interval(0.95).high()).isCloseTo(told.high(), within(1e-8));
  }

  @Test
  void theSameCellsByTheKeptGridGiveTheSame() {
    Season kept = Season.fit(CELLS, Priors.ASSUMED, SEASON.grid());
    assertThat(kept.state("after").logSpeed(MASS_KG).interval(0.95))
        .isEqualTo(AFTER.logSpeed(MASS_KG).interval(0.95));
  }

  @Test
  void arrowsTooAlikeDoNotSplitEnergyFromVirtualMass() {
    List<SeasonCell> one = CELLS.stream().filter(cell -> cell.arrow().equals("a2")).toList();
    StateCurve curve = Season.fit(one, Priors.ASSUMED).state("after");
    assertThat(curve.energy().isSplit()).isFalse();
    assertThat(curve.energy().energyJ(0.95)).isEmpty();
    assertThat(curve.energy().virtualMassKg(0.95)).isEmpty();
    assertThat(curve.energy().region(0.95)).isEmpty();
    assertThat(curve.isBeyondArrows(MASS_KG)).isFalse();
    assertThat(curve.isBeyondArrows(1.2 * MASS_KG)).isTrue();
    assertThat(curve.isBeyondArrows(0.7 * MASS_KG)).isTrue();
  }

  @Test
  void todayHoldsTheShotsAloneAndTellsTheSetUpBeside() {
    Today today = Today.of(CELLS, Priors.ASSUMED);
    SeasonCell cell = CELLS.get(0);
    Quantity speed = today.logSpeed(cell);
    // The reference in R gives bow b1's variance and degrees: 4.0928078e-05 and 67.
    double u = Math.sqrt(4.0928078e-05 / cell.shots());
    assertThat(speed.standardUncertainty(Kind.OWN)).isCloseTo(u, within(1e-9));
    assertThat(speed.only(Kind.OWN).interval(0.95).halfWidth())
        .isCloseTo(StudentT.twoSided(0.95, 67) * u, within(1e-9));
    assertThat(speed.standardUncertainty(Kind.COMMON)).isEqualTo(cell.setUpU());
    Quantity difference =
        today.difference(cell.state(), otherBow(cell).state(), cell.session()).orElseThrow();
    assertThat(difference.standardUncertainty(Kind.COMMON)).isZero();
    assertThat(today.difference("after", cell.state(), cell.session())).isEmpty();
  }

  private static SeasonCell otherBow(SeasonCell cell) {
    return CELLS.stream()
        .filter(other -> other.session().equals(cell.session()) && !other.bow().equals(cell.bow()))
        .findFirst()
        .orElseThrow();
  }

  /** Heavy arrows a little too slow for any bow: K below 0. */
  @Test
  void virtualMassBelowZeroHasAReachToo() {
    List<SeasonCell> cells = new ArrayList<>();
    for (int a = 0; a < 4; a++) {
      for (int j = 0; j < 3; j++) {
        double x = (a - 1.5) * 0.2;
        double y = 4 - Math.log(1 + 1.1 * x) / 2;
        double kg = 0.03 * (1 + x);
        cells.add(new SeasonCell("b", "b", "a" + a, "b", kg, 0, "s" + j, 0, 5, y, 1e-4));
      }
    }
    StateCurve curve = Season.fit(cells, Priors.ASSUMED).state("b");
    Estimate k = curve.energy().virtualMassKg(0.95).orElseThrow();
    assertThat(k.value()).isNegative();
    assertThat(k.interval().low()).isLessThan(k.value());
    assertThat(k.interval().high()).isGreaterThan(k.value());
    double atMean = curve.kineticEnergyJ(0.03, 0.95).value();
    for (double wanted : new double[] {0.5 * atMean, atMean, 2 * atMean}) {
      Interval reach =
          curve.reach(new Target.KineticEnergy(Quantity.exact(wanted)), 0.95).intervalKg();
      assertThat(reach.low()).isLessThanOrEqualTo(reach.high()).isNotNaN();
    }
  }

  /**
   * Five sessions, or six alike, tell nothing of the weather; six do, and a day is then one of it.
   */
  @Test
  void conditionsCountFromSixSessionsOn() {
    Map<String, Double> celsius = new HashMap<>();
    CELLS.forEach(cell -> celsius.putIfAbsent(cell.session(), 10.0));
    Map<String, Double> same = new HashMap<>(celsius);
    for (int i = same.size(); i < 8; i++) {
      same.put("other " + i, 10.0);
    }
    String first = CELLS.get(0).session();
    Map<String, Double> few = Map.of(first, 10.0, "x1", 11.0, "x2", 9.0, "x3", 8.0, "x4", 12.0);
    Map<String, Double> enough = new HashMap<>(few);
    enough.put("x5", 16.0);
    for (Map<String, Double> values : List.of(same, few)) {
      Covariate covariate = Covariate.temperature(values);
      Season season = Season.fit(CELLS, List.of(covariate), Priors.ASSUMED);
      assertThat(season.effect(covariate)).isEmpty();
      assertThat(season.state("after").logSpeed(MASS_KG).interval(0.95))
          .isEqualTo(AFTER.logSpeed(MASS_KG).interval(0.95));
    }
    Covariate covariate = Covariate.temperature(enough);
    Season season = Season.fit(CELLS, List.of(covariate), Priors.ASSUMED);
    double effect = season.effect(covariate).orElseThrow().value();
    Season kept = Season.fit(CELLS, List.of(covariate), Priors.ASSUMED, season.grid());
    assertThat(kept.effect(covariate).orElseThrow().value()).isEqualTo(effect);
    List<SessionDays.Day> days = season.days();
    assertThat(days).hasSize(season.sessions());
    assertThat(days.get(0).session()).isEqualTo(first);
    assertThat(days.get(0).explained()).isCloseTo(-effect, within(1e-12));
    assertThat(days.get(1).explained()).isZero();
    assertThat(SEASON.days()).allSatisfy(day -> assertThat(day.explained()).isZero());
  }

  @Test
  void whatIsNoConditionIsRefused() {
    assertThatThrownBy(() -> Covariate.humidity(Map.of("s", Double.NaN)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Covariate("nothing", 0, Map.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Whatever it is given, an interval comes out that can be told. */
  @Test
  void nonsenseHasAnIntervalToo() {
    Random random = new Random(Seed.of(SeasonAnswersTest.class));
    for (int i = 0; i < 40; i++) {
      List<SeasonCell> cells = new ArrayList<>();
      for (int c = 0; c <= i % 7; c++) {
        String bow = "bow " + random.nextInt(2);
        cells.add(
            new SeasonCell(
                bow,
                bow,
                "arrow " + (c < 4 ? 0 : 1),
                bow,
                0.001 + 0.2 * random.nextDouble(),
                0.01 * random.nextDouble() * random.nextInt(2),
                "session " + c % 4,
                random.nextDouble() * random.nextInt(2),
                1 + random.nextInt(4),
                10 * random.nextDouble(),
                random.nextDouble() * random.nextInt(2)));
      }
      StateCurve curve = Season.fit(cells, Priors.ASSUMED).state(cells.get(0).state());
      Interval interval = curve.logSpeed(cells.get(0).massKg()).interval(0.95);
      assertThat(interval.low()).isFinite().isLessThan(interval.high());
      assertThat(interval.high()).isFinite();
    }
  }

  @Test
  void whatIsNoSeasonIsRefused() {
    SeasonCell one = new SeasonCell("b", "b", "a", "b", 0.03, 0, "s", 0, 1, 4, 0);
    SeasonCell other = new SeasonCell("c", "b", "a2", "c", 0.03, 0, "s", 0, 1, 4, 0);
    assertThatThrownBy(() -> Season.fit(List.of(), Priors.ASSUMED))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Season.fit(List.of(one, one), Priors.ASSUMED))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> SEASON.state("another")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Season.fit(List.of(one, other), Priors.ASSUMED))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SeasonCell("b", "b", "a", "b", 0.03, 0, "s", 0, 0, 4, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new SeasonCell("b", "b", "a", "b", 0.03, 0, "s", 0, 1, Double.NaN, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
