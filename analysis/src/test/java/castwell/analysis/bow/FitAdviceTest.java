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

  private static List<Advice> advice(Cell... cells) {
    return FitAdvice.of(new BowCells("bow", List.of(cells)), DRAW_WEIGHT_N);
  }

  @Test
  void wellSpreadMassesNeedNothing() {
    assertThat(advice(cell(350, 8, .5, 0), cell(500, 8, .5, 0), cell(700, 8, .5, 0))).isEmpty();
  }

  @Test
  void oneMassAsksForAnotherFarAway() {
    List<Advice> advice = advice(cell(450, 5, .5, 0));

    assertThat(advice).hasSize(1).first().isInstanceOf(Advice.OneMass.class);
    assertThat(advice.get(0).sentence()).contains("near 700 gr");
  }

  @Test
  void twoMassesAskForAThirdBetween() {
    assertThat(advice(cell(350, 9, .3, 0), cell(700, 9, .3, 0)))
        .hasSize(1)
        .first()
        .isInstanceOf(Advice.TwoMasses.class);
  }

  @Test
  void massesTooCloseTogetherAskForLighterAndHeavierOnes() {
    assertThat(advice(cell(490, 5, .9, 0), cell(500, 5, .9, 0), cell(510, 5, .9, 0)))
        .anyMatch(
            a ->
                a instanceof Advice.TooCloseTogether
                    || a instanceof Advice.VirtualMassBelowZero
                    || a instanceof Advice.HeavierNotSlower);
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
    BowCells bow =
        new BowCells("bow", List.of(cell(350, 6, .5, 0), cell(500, 4, .5, 0), cell(700, 5, .5, 0)));
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
  }

  /** Beale's region holds the fit, and its widest K lies near what F and the standard error say. */
  @Test
  void theJointRegionGoesRoundTheFit() {
    BowCells bow =
        new BowCells("bow", List.of(cell(350, 6, .5, 0), cell(500, 6, .5, 0), cell(700, 6, .5, 0)));
    VirtualMassFit fit = bow.fit().orElseThrow();

    List<JointRegion.Corner> corners = JointRegion.of(fit, 0.95).corners();

    double lowest = corners.stream().mapToDouble(c -> c.virtualMassKg()).min().orElseThrow();
    double highest = corners.stream().mapToDouble(c -> c.virtualMassKg()).max().orElseThrow();
    // F(0.95; 2, 16) = 3.634 by the usual tables.
    double reach = fit.virtualMassSe() * Math.sqrt(2 * 3.634);
    assertThat(fit.virtualMassKg() - lowest).isCloseTo(reach, within(0.15 * reach));
    assertThat(highest - fit.virtualMassKg()).isCloseTo(reach, within(0.15 * reach));
  }
}
