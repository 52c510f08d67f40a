package castwell.analysis.bow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.SetUp;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is said of data made by the model, in words that say what to shoot. */
class FitAdviceTest {
  private static final double DRAW_WEIGHT_N = 50 * Units.NEWTONS_PER_POUND;
  private final Random random = new Random(5);

  private Cell cell(double grains, int shots, double scatterFps, double offFps) {
    double massKg = grains * Units.KILOGRAMS_PER_GRAIN;
    double speed =
        Math.sqrt(
            2 * 30 * Units.JOULES_PER_FOOT_POUND / (massKg + 150 * Units.KILOGRAMS_PER_GRAIN));
    List<CellShot> fired = new ArrayList<>();
    for (int i = 0; i < shots; i++) {
      double fps = offFps + scatterFps * random.nextGaussian();
      fired.add(new CellShot(grains + "-" + i, i, speed + fps * Units.METRES_PER_FOOT, 0, false));
    }
    return new Cell(
        new CellName("bow", "state", "arrow " + grains, "day"),
        massKg,
        new SetUp("gates", 0.005),
        fired,
        List.of());
  }

  /** An even number of shots as far above as below the model's speed, all with this s. */
  private Cell exactly(double grains, int shots, double sdFps) {
    Cell exact = cell(grains, shots, 0, 0);
    double off = sdFps * Math.sqrt((shots - 1.0) / shots) * Units.METRES_PER_FOOT;
    List<CellShot> fired =
        exact.shots().stream()
            .map(
                s ->
                    new CellShot(
                        s.id(),
                        s.firedS(),
                        s.speedMps() + (s.firedS() % 2 == 0 ? off : -off),
                        0,
                        false))
            .toList();
    return new Cell(exact.name(), exact.massKg(), exact.setUp(), fired, List.of());
  }

  private static List<Advice> advice(Cell... cells) {
    BowSums bow = BowSums.of("bow", List.of(cells));
    return FitAdvice.of(bow, bow, DRAW_WEIGHT_N);
  }

  private static double grains(double kg) {
    return kg / Units.KILOGRAMS_PER_GRAIN;
  }

  @Test
  void wellSpreadMassesNeedNothing() {
    assertThat(advice(cell(350, 8, .5, 0), cell(500, 8, .5, 0), cell(700, 8, .5, 0))).isEmpty();
  }

  @Test
  void oneMassAsksForAnotherFarAway() {
    List<Advice> advice = advice(cell(450, 5, .5, 0));

    assertThat(advice).hasSize(1).first().isInstanceOf(Advice.OneMass.class);
    Advice.OneMass one = (Advice.OneMass) advice.get(0);
    assertThat(grains(one.otherKg())).isCloseTo(700, within(1e-6));
  }

  @Test
  void twoMassesAskForAThirdBetween() {
    assertThat(advice(cell(350, 9, .3, 0), cell(700, 9, .3, 0)))
        .hasSize(1)
        .first()
        .isInstanceOf(Advice.TwoMasses.class);
  }

  /** Between any two bows: 500 and 600 gr, each mean to 0.3 ft/s, know K to 30 gr only. */
  @Test
  void massesTooCloseTogetherAskForLighterAndHeavierOnes() {
    List<Advice> advice =
        advice(exactly(500, 10, .95), exactly(550, 10, .95), exactly(600, 10, .95));

    assertThat(advice).hasSize(1).first().isInstanceOf(Advice.TooCloseTogether.class);
    Advice.TooCloseTogether close = (Advice.TooCloseTogether) advice.get(0);
    assertThat(grains(close.virtualMassSeKg())).isBetween(25.0, 35.0);
    assertThat(grains(close.lightKg())).isCloseTo(400, within(1e-6));
    assertThat(grains(close.heavyKg())).isCloseTo(700, within(1e-6));
    assertThat(close.expectedSeKg()).isLessThan(close.virtualMassSeKg() / 2);
  }

  @Test
  void wellSpreadMassesWithMuchScatterAskForMoreShots() {
    List<Advice> advice = advice(exactly(350, 4, 3), exactly(500, 4, 3), exactly(700, 4, 3));

    assertThat(advice).hasSize(1).first().isInstanceOf(Advice.TooFewRepeats.class);
    Advice.TooFewRepeats few = (Advice.TooFewRepeats) advice.get(0);
    int each = few.shotsEach();
    List<Advice> then =
        advice(exactly(350, each * 2, 3), exactly(500, each * 2, 3), exactly(700, each * 2, 3));
    assertThat(each).isGreaterThan(4);
    assertThat(then).isEmpty();
  }

  @Test
  void aVirtualMassThatMayBeNoneIsNoCauseOfAnything() {
    List<Advice> advice = advice(exactly(480, 4, 3), exactly(500, 4, 3), exactly(520, 4, 3));

    assertThat(advice).anyMatch(Advice.NotToldFromZero.class::isInstance);
    assertThat(advice).anyMatch(Advice.TooCloseTogether.class::isInstance);
  }

  @Test
  void aVirtualMassBelowZeroIsTold() {
    // Speeds that fall faster than 1 / sqrt(m).
    assertThat(advice(cell(400, 5, 0, 10), cell(500, 5, 0, 0), cell(600, 5, 0, -10)))
        .anyMatch(Advice.VirtualMassBelowZero.class::isInstance);
  }

  @Test
  void heavierArrowsThatWerentSlowerAreTold() {
    assertThat(advice(cell(400, 5, .1, -20), cell(500, 5, .1, 0), cell(600, 5, .1, 20)))
        .containsExactly(new Advice.HeavierNotSlower());
  }

  @Test
  void oneShotOfEachAsksForRepeats() {
    assertThat(advice(cell(350, 1, 0, 0), cell(500, 1, 0, .1), cell(700, 1, 0, 0)))
        .anyMatch(Advice.NoRepeats.class::isInstance);
  }

  @Test
  void noShotsAndTwoShotsAreTooFew() {
    assertThat(advice()).containsExactly(new Advice.TooFewShots(0));
    assertThat(advice(cell(350, 1, 0, 0), cell(700, 1, 0, 0)))
        .containsExactly(new Advice.TooFewShots(2));
  }

  @Test
  void aMistaggedArrowIsALackOfFit() {
    assertThat(advice(cell(350, 8, .5, 0), cell(500, 8, .5, 6), cell(700, 8, .5, 0)))
        .anyMatch(Advice.CurveMisses.class::isInstance);
  }

  /** Worked out apart from this project: 500 and 600 gr, K = 150 gr, u of each mean 0.3 ft/s. */
  @Test
  void twoNearMassesKnowTheVirtualMassToThirtyGrains() {
    double se =
        DesignPrecision.of(
                30 * Units.JOULES_PER_FOOT_POUND,
                150 * Units.KILOGRAMS_PER_GRAIN,
                new double[] {500 * Units.KILOGRAMS_PER_GRAIN, 600 * Units.KILOGRAMS_PER_GRAIN},
                new double[] {1, 1},
                0.3 * Units.METRES_PER_FOOT)
            .virtualMassSe();

    assertThat(se / Units.KILOGRAMS_PER_GRAIN).isCloseTo(30, within(1.0));
  }

  /** The same covariance that the fit itself gives, once shot. */
  @Test
  void theDesignsPrecisionIsTheFits() {
    BowSums bow =
        BowSums.of("bow", List.of(cell(350, 6, .5, 0), cell(500, 4, .5, 0), cell(700, 5, .5, 0)));
    VirtualMassFit fit = bow.fit().orElseThrow();

    DesignPrecision design =
        DesignPrecision.of(
            fit.energyJ(),
            fit.virtualMassKg(),
            fit.repeats().massKg(),
            new double[] {6, 4, 5},
            fit.residualSdMps());

    assertThat(design.energySe()).isCloseTo(fit.energySe(), within(1e-12));
    assertThat(design.virtualMassSe()).isCloseTo(fit.virtualMassSe(), within(1e-15));
    assertThat(design.correlation()).isCloseTo(fit.correlation(), within(1e-12));
  }

  @Test
  void oneMassTellsNoVirtualMassHoweverOftenItIsShot() {
    double se = DesignPrecision.of(40, 0.01, new double[] {0.03, 0.03}, 20, 0.2).virtualMassSe();

    assertThat(se).isGreaterThan(1e3);
  }

  /** By F: nothing is ruled out where the speeds could be all alike; the outline stays finite. */
  @Test
  void aRegionWithoutAnEndIsCutAndSaysSo() {
    BowSums bow =
        BowSums.of("bow", List.of(exactly(480, 4, 3), exactly(500, 4, 3), exactly(520, 4, 3)));

    JointRegion region = JointRegion.of(bow.fit().orElseThrow(), 0.95);

    assertThat(region.isOpen()).isTrue();
    assertThat(region.corners())
        .allMatch(c -> c.virtualMassKg() <= 52_000.1 * Units.KILOGRAMS_PER_GRAIN)
        .allMatch(c -> c.virtualMassKg() > -480 * Units.KILOGRAMS_PER_GRAIN);
  }

  /** Beale's region holds the fit, and its widest K lies near what F and the standard error say. */
  @Test
  void theJointRegionGoesRoundTheFit() {
    BowSums bow =
        BowSums.of("bow", List.of(cell(350, 6, .5, 0), cell(500, 6, .5, 0), cell(700, 6, .5, 0)));
    VirtualMassFit fit = bow.fit().orElseThrow();

    assertThat(JointRegion.of(fit, 0.95).isOpen()).isFalse();
    List<JointRegion.Corner> corners = JointRegion.of(fit, 0.95).corners();

    double lowest = corners.stream().mapToDouble(c -> c.virtualMassKg()).min().orElseThrow();
    double highest = corners.stream().mapToDouble(c -> c.virtualMassKg()).max().orElseThrow();
    // F(0.95; 2, 16) = 3.634 by the usual tables.
    double reach = fit.virtualMassSe() * Math.sqrt(2 * 3.634);
    assertThat(fit.virtualMassKg() - lowest).isCloseTo(reach, within(0.15 * reach));
    assertThat(highest - fit.virtualMassKg()).isCloseTo(reach, within(0.15 * reach));
  }
}
