package castwell.analysis.bow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.air.AtBow;
import castwell.analysis.air.Drag;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.SetUp;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A bow of 30 ft lbf and a virtual mass of 150 gr, whose arrows lose speed on the way to the gates.
 * Fitted at the gates they gave 160 gr at 2.3 m and 172 gr at 5.3 m (reckoned apart from this).
 */
class AtBowTest {
  private static final long SEED = Seed.of(AtBowTest.class);
  private static final double ENERGY_J = 30 * Units.JOULES_PER_FOOT_POUND;
  private static final double VIRTUAL_KG = 150 * Units.KILOGRAMS_PER_GRAIN;
  private static final double DIAMETER_M = 11.0 / 32 * Units.METRES_PER_INCH;
  private static final double DENSITY = 1.225;
  private static final double[] MASSES_GR = {300, 400, 500, 600, 700};

  private final Random random = new Random(SEED);

  @ParameterizedTest
  @CsvSource({
    "2.3, " + Drag.LAMINAR,
    "2.3, " + Drag.LARGE_VANES,
    "2.3, " + Drag.TURBULENT,
    "5.3, " + Drag.LAMINAR,
    "5.3, " + Drag.LARGE_VANES,
    "5.3, " + Drag.TURBULENT
  })
  void theVirtualMassIsFoundWithinItsUncertainty(double distanceM, double coefficient) {
    Quantity k = fitted(cells(distanceM, coefficient, 0.001)).virtualMassKg();

    assertThat(k.interval(0.95).contains(VIRTUAL_KG)).as("seed %d: %s", SEED, k).isTrue();
    assertThat(grains(k.only(Kind.COMMON).standardUncertainty()))
        .isCloseTo(distanceM == 2.3 ? 1.8 : 4.2, within(0.4));
  }

  /** With the coefficient as it is, nothing but rounding is left. */
  @Test
  void withoutScatterItIsExact() {
    for (double distanceM : new double[] {2.3, 5.3}) {
      VirtualMass bow = fitted(cells(distanceM, Drag.LARGE_VANES, 1e-12));
      assertThat(grains(bow.virtualMassKg().value())).isCloseTo(150, within(1e-4));
      assertThat(bow.energyJ().value()).isCloseTo(ENERGY_J, within(1e-5));
    }
  }

  @Test
  void atTheGatesItIsBentByTheAir() {
    double near =
        grains(fitted(atGates(cells(2.3, Drag.LARGE_VANES, 1e-9))).virtualMassKg().value());
    double far =
        grains(fitted(atGates(cells(5.3, Drag.LARGE_VANES, 1e-9))).virtualMassKg().value());

    assertThat(near).isCloseTo(160, within(1.0));
    assertThat(far).isCloseTo(172, within(2.0));
  }

  /** Of one cell it isn't known: a curve through both kinds of speed would be bent. */
  @Test
  void oneCellAtTheGatesTakesAllThere() {
    List<Cell> cells = new ArrayList<>(cells(5.3, Drag.LARGE_VANES, 1e-9));
    cells.set(0, cells.get(0).atGates());

    BowSums some = BowSums.of("bow", cells);

    assertThat(some.areAtBow()).isFalse();
    assertThat(some.virtualMass().orElseThrow().virtualMassKg().value())
        .isCloseTo(
            fitted(atGates(cells(5.3, Drag.LARGE_VANES, 1e-9))).virtualMassKg().value(),
            within(1e-7));
  }

  /** What the coefficient does to both, against fits with coefficients drawn anew (JCGM 101). */
  @Test
  void dragsUncertaintyIsWhatFitsWithOtherCoefficientsShow() {
    VirtualMass told = fitted(cells(5.3, Drag.LARGE_VANES, 1e-9));
    double half = (Drag.TURBULENT - Drag.LAMINAR) / 2;
    double energies = 0;
    double masses = 0;
    int trials = 2000;
    for (int i = 0; i < trials; i++) {
      double coefficient = Drag.LARGE_VANES + half * (2 * random.nextDouble() - 1);
      VirtualMass bow = fitted(cells(5.3, coefficient, 1e-9));
      energies += Math.pow(bow.energyJ().value() - ENERGY_J, 2);
      masses += Math.pow(bow.virtualMassKg().value() - VIRTUAL_KG, 2);
    }
    assertThat(Math.sqrt(energies / trials) / told.energyJ().standardUncertainty(Kind.COMMON))
        .isCloseTo(1, within(0.05));
    assertThat(Math.sqrt(masses / trials) / told.virtualMassKg().standardUncertainty(Kind.COMMON))
        .isCloseTo(1, within(0.05));
  }

  private static VirtualMass fitted(List<Cell> cells) {
    return BowSums.of("bow", cells).virtualMass().orElseThrow();
  }

  private static List<Cell> atGates(List<Cell> cells) {
    return cells.stream().map(Cell::atGates).toList();
  }

  private static double grains(double kilograms) {
    return kilograms / Units.KILOGRAMS_PER_GRAIN;
  }

  /** Five shots of each mass, seen so far from the bow by gates that are perfect. */
  private List<Cell> cells(double distanceM, double coefficient, double relativeScatter) {
    List<Cell> cells = new ArrayList<>();
    for (double grains : MASSES_GR) {
      double massKg = grains * Units.KILOGRAMS_PER_GRAIN;
      double leaving = Math.sqrt(2 * ENERGY_J / (massKg + VIRTUAL_KG));
      double lost = Drag.lossPerMetre(coefficient, DIAMETER_M, massKg, DENSITY) * distanceM;
      AtBow atBow = AtBow.of(DIAMETER_M, massKg, DENSITY, distanceM);
      List<CellShot> shots = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        double scattered = leaving * (1 + relativeScatter * random.nextGaussian());
        double mps = scattered * Math.exp(-lost) * atBow.factor();
        shots.add(new CellShot(grains + " " + i, i, mps, 0, false));
      }
      CellName name = new CellName("bow", "s", grains + " gr", "day");
      cells.add(new Cell(name, massKg, new SetUp("gates", 0), shots, List.of(), atBow));
    }
    return cells;
  }
}
