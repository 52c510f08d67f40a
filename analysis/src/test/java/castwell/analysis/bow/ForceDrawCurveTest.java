package castwell.analysis.bow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.analysis.uncertainty.Quantity;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ForceDrawCurveTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  private static ForceDrawCurve curve(double unitX, double unitY, double[] x, double[] y) {
    return ForceDrawCurve.of(
        IntStream.range(0, x.length)
            .mapToObj(i -> new Point(x[i] * unitX, y[i] * unitY, NONE))
            .toList(),
        NONE);
  }

  /**
   * R 4.2.2: f <- splinefun(x, y, method = "monoH.FC"), x in m and y in N; integrate(f, min(x),
   * max(x), rel.tol = 1e-12); the trapezoid by sum(diff(x) * (head(y, -1) + tail(y, -1)) / 2).
   */
  @Test
  void storedEnergyAsInR() {
    ForceDrawCurve curve =
        curve(
            0.0254,
            4.4482216152605,
            new double[] {8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28},
            new double[] {0, 9, 16.5, 22.5, 28, 33, 37.5, 42, 46.5, 52, 60});

    assertThat(curve.storedEnergyJ()).isCloseTo(71.6512124083474, within(1e-9));
    assertThat(curve.trapezoidJ()).isCloseTo(71.632381603509, within(1e-11));
    assertThat(curve.stacksAtM().orElseThrow() / 0.0254).isBetween(26.0, 28.0);
  }

  /** R 4.2.2, as above, through a plateau: the limiter is at work. */
  @Test
  void aPlateauIsNotOvershotAsInR() {
    ForceDrawCurve curve = curve(1, 1, new double[] {0, 1, 2, 3, 5}, new double[] {0, 4, 4, 5, 12});

    assertThat(curve.storedEnergyJ()).isCloseTo(27.2291666666667, within(1e-9));
  }

  /** A spring's area is half of force times way, by either rule. */
  @Test
  void aStraightLineIsASpring() {
    ForceDrawCurve curve = curve(1, 1, new double[] {0.2, 0.4, 0.7}, new double[] {0, 80, 200});

    assertThat(curve.storedEnergyJ()).isCloseTo(50, within(1e-12));
    assertThat(curve.trapezoidJ()).isCloseTo(50, within(1e-12));
    assertThat(curve.fullness()).isCloseTo(0.5, within(1e-12));
    assertThat(curve.stacksAtM()).isEmpty();
  }

  /** Tuijn and Kooi, Eur. J. Phys. 13 (1992) 127, table I: W over F d, worked out from it. */
  @ParameterizedTest
  @CsvSource({
    "42.6, 170.5, .430, .5811",
    "50.3, 170, .509, .5813",
    "45.6, 178, .440, .5822",
    "33.2, 130, .429, .5953"
  })
  void fullnessOfFourBows(double energyJ, double weightN, double wayM, double fullness) {
    assertThat(ForceDrawCurve.fullness(energyJ, weightN, wayM)).isCloseTo(fullness, within(5e-5));
  }

  @Test
  void aKnownBraceHeightBeginsTheCurve() {
    ForceDrawCurve curve =
        ForceDrawCurve.of(
            List.of(new Point(0.4, 80, NONE), new Point(0.7, 200, NONE)),
            OptionalDouble.of(0.2 - ForceDrawCurve.BEYOND_PIVOT_M));

    assertThat(curve.isFromBrace()).isTrue();
    assertThat(curve.storedEnergyJ()).isCloseTo(50, within(1e-12));
  }

  /** Let down at nine tenths of the force, a tenth of the energy is lost. */
  @Test
  void hysteresisIsWhatTheLetDownLacks() {
    DoubleUnaryOperator force = x -> 300 * (x - 0.2);
    List<Point> points =
        IntStream.rangeClosed(0, 5)
            .mapToDouble(i -> 0.2 + i * 0.1)
            .mapToObj(
                x ->
                    new Point(
                        x, force.applyAsDouble(x), OptionalDouble.of(0.9 * force.applyAsDouble(x))))
            .toList();

    assertThat(ForceDrawCurve.of(points, NONE).hysteresis().orElseThrow())
        .isCloseTo(0.1, within(1e-12));
  }

  /** eta = m / (m + K) when nothing but K keeps energy back. */
  @Test
  void efficiencyAndVirtualMassFollowFromTheStoredEnergy() {
    ForceDrawCurve curve = curve(1, 1, new double[] {0.2, 0.4, 0.7}, new double[] {0, 80, 200});
    double massKg = 0.03;
    double virtualKg = 0.01;
    Quantity speed = Quantity.exact(Math.sqrt(2 * 50 / (massKg + virtualKg)));
    Quantity energy = speed.times(speed).times(massKg / 2);

    assertThat(curve.efficiency(energy).value()).isCloseTo(0.75, within(1e-12));
    assertThat(curve.virtualMassKg(massKg, speed).value()).isCloseTo(virtualKg, within(1e-12));
  }

  /** F = 100 x + 10 x^3 by fine points: its slope is 1.5 times that at x = 1 from x = 1.7795 on. */
  @Test
  void stackBeginsWhereTheSlopePassesOneAndAHalfTimesThatHalfWay() {
    double[] x = IntStream.rangeClosed(0, 200).mapToDouble(i -> i * 0.01).toArray();
    double[] y = Arrays.stream(x).map(at -> 100 * at + 10 * at * at * at).toArray();

    assertThat(curve(1, 1, x, y).stacksAtM().orElseThrow()).isCloseTo(1.7795, within(0.006));
  }

  @Test
  void twoPointsAreNoCurve() {
    assertThatThrownBy(() -> curve(1, 1, new double[] {0, 1}, new double[] {0, 1}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("three points");
  }

  /**
   * R 4.2.2, as above: a flat middle, then stack; a <- seq(.45, .7, .0001), max(a[f(a, deriv = 1)
   * <= 1.5 * f(.45, deriv = 1)]).
   */
  @Test
  void aFlatMiddleAsInR() {
    ForceDrawCurve curve =
        curve(1, 1, new double[] {.2, .3, .4, .5, .6, .7}, new double[] {0, 60, 90, 92, 120, 210});

    assertThat(curve.storedEnergyJ()).isCloseTo(46.45, within(1e-9));
    assertThat(curve.stacksAtM().orElseThrow()).isCloseTo(0.4691, within(0.00125));
  }

  /** R 4.2.2's curve falls here, by min(f(seq(0, 4, .001), deriv = 1)) = -0.112. */
  @Test
  void oursRisesWhereThatOfROvershoots() {
    MonotoneCubic curve =
        new MonotoneCubic(new double[] {0, 1, 2, 3, 4}, new double[] {0, 7, 8, 9, 48});

    for (int i = 0; i <= 4000; i++) {
      assertThat(curve.slopeAt(i / 1000.0)).isGreaterThan(-1e-12);
    }
  }

  /** Area of F = 400 (x - 0.2) - 300 (x - 0.2)^3, worked out: 200 w^2 - 75 w^4, w = 0.5. */
  @Test
  void aCubicsAreaFromFinePoints() {
    double[] x = IntStream.rangeClosed(0, 50).mapToDouble(i -> 0.2 + i * 0.01).toArray();
    double[] y = Arrays.stream(x).map(at -> 400 * (at - .2) - 300 * Math.pow(at - .2, 3)).toArray();

    assertThat(curve(1, 1, x, y).storedEnergyJ()).isCloseTo(45.3125, within(1e-3));
    assertThat(curve(1, 1, x, y).trapezoidJ()).isLessThan(45.3125);
  }

  /** What "monotone" promises: Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238. */
  @Test
  void risingForcesNeverMakeAFallingCurve() {
    long seed = Seed.of(ForceDrawCurveTest.class);
    Random random = new Random(seed);
    for (int run = 0; run < 300; run++) {
      double[] x = new double[8];
      double[] y = new double[8];
      for (int i = 1; i < x.length; i++) {
        x[i] = x[i - 1] + 0.01 + random.nextDouble();
        y[i] = y[i - 1] + Math.pow(random.nextDouble(), 4) * 50;
      }
      MonotoneCubic curve = new MonotoneCubic(x, y);
      for (int i = 0; i <= 500; i++) {
        assertThat(curve.slopeAt(x[7] * i / 500)).as("seed %d", seed).isGreaterThan(-1e-9);
      }
    }
  }

  /** As {@link #hysteresisIsWhatTheLetDownLacks}: both ends of a let-down go without saying. */
  @Test
  void aLetDownNeedNotBeMeasuredAtItsEnds() {
    ForceDrawCurve curve =
        ForceDrawCurve.of(
            List.of(
                new Point(0.2, 0, NONE),
                new Point(0.4, 80, OptionalDouble.of(80)),
                new Point(0.7, 200, NONE)),
            NONE);

    assertThat(curve.hysteresis().orElseThrow()).isCloseTo(0, within(1e-12));
  }

  @Test
  void aLetDownWithAHoleTellsNoHysteresis() {
    assertThat(curve(1, 1, new double[] {0.2, 0.4, 0.7}, new double[] {0, 80, 200}).hysteresis())
        .isEmpty();
  }

  @Test
  void whatCantBeACurveIsRefusedWithItsPlace() {
    assertThatThrownBy(() -> curve(.0254, 1, new double[] {8, 20, 20}, new double[] {0, 9, 30}))
        .hasMessage("two points of the curve are at 20.00 in; leave one out");
    assertThatThrownBy(() -> curve(.0254, 1, new double[] {8, 20, 28}, new double[] {0, -9, 30}))
        .hasMessageContaining("at 20.00 in");
    assertThatThrownBy(
            () -> curve(.0254, 1, new double[] {8, 20, 28}, new double[] {0, Double.NaN, 30}))
        .hasMessageContaining("at 20.00 in");
    assertThatThrownBy(() -> curve(.0254, 1, new double[] {8, 20, 28}, new double[] {0, 9, 0}))
        .hasMessageContaining("at full draw, 28.00 in");
  }
}
