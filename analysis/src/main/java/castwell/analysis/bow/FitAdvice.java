package castwell.analysis.bow;

import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Looks at what was shot and at its fit, and says what to shoot next. */
public final class FitAdvice {
  /** Least grains per pound that a wooden bow usually wants; common practice. */
  public static final double LEAST_GPP = 8;

  private static final double HEAVY_GPP = 14;
  private static final double MIDDLE_GPP = 10;

  /** K known to worse than this share of the middle arrow tells little of any bow's. */
  private static final double VAGUE = 0.1;

  private static final double MISSES = 0.05;
  private static final double SHOTS = 5;

  private final BowCells bow;
  private final double gpp;

  private FitAdvice(BowCells bow, double drawWeightN) {
    this.bow = bow;
    this.gpp = drawWeightN * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP;
  }

  /** Empty where there is nothing to mend. */
  public static List<Advice> of(BowCells bow, double drawWeightN) {
    return new FitAdvice(bow, drawWeightN).advice();
  }

  private List<Advice> advice() {
    double[] shotKg = bow.massesKg();
    double[] masses = Arrays.stream(shotKg).distinct().sorted().toArray();
    if (masses.length == 1 && shotKg.length > 0) {
      return List.of(new Advice.OneMass(grains(masses[0]), grains(farFrom(masses[0]))));
    }
    if (shotKg.length < 3) {
      return List.of(new Advice.TooFewShots(shotKg.length));
    }
    Optional<VirtualMassFit> fit = bow.fit();
    if (fit.isEmpty()) {
      return List.of(new Advice.HeavierNotSlower());
    }
    return fitted(fit.get(), masses);
  }

  private List<Advice> fitted(VirtualMassFit fit, double[] masses) {
    List<Advice> advice = new ArrayList<>();
    double light = LEAST_GPP * gpp;
    double heavy = HEAVY_GPP * gpp;
    if (masses.length == 2) {
      advice.add(new Advice.TwoMasses(grains((masses[0] + masses[1]) / 2)));
    }
    if (fit.virtualMassKg() <= 0) {
      advice.add(new Advice.VirtualMassBelowZero(grains(light), grains(heavy)));
    } else if (fit.virtualMassSe() > VAGUE * masses[masses.length / 2]) {
      double expected = with(fit, light, heavy).virtualMassSe();
      advice.add(
          new Advice.TooCloseTogether(
              grains(fit.virtualMassSe()), grains(light), grains(heavy), grains(expected)));
    }
    LackOfFit.of(fit)
        .filter(lack -> lack.pValue() < MISSES)
        .ifPresent(lack -> advice.add(new Advice.CurveMisses(lack.pValue())));
    return advice;
  }

  /** What is known if five shots each of two more masses join those there are. */
  private static DesignPrecision with(VirtualMassFit fit, double light, double heavy) {
    Repeats repeats = fit.repeats();
    int n = repeats.masses();
    double[] masses = Arrays.copyOf(repeats.massKg(), n + 2);
    double[] shots =
        Arrays.copyOf(Arrays.stream(repeats.count()).asDoubleStream().toArray(), n + 2);
    masses[n] = light;
    masses[n + 1] = heavy;
    shots[n] = SHOTS;
    shots[n + 1] = SHOTS;
    return DesignPrecision.of(
        fit.energyJ(), fit.virtualMassKg(), masses, shots, fit.residualSdMps());
  }

  private double farFrom(double massKg) {
    return massKg > MIDDLE_GPP * gpp ? LEAST_GPP * gpp : HEAVY_GPP * gpp;
  }

  private static double grains(double kg) {
    return kg / Units.KILOGRAMS_PER_GRAIN;
  }
}
