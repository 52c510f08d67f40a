package castwell.analysis.bow;

import castwell.analysis.uncertainty.StudentT;
import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Says what to shoot next, from the shots so far and their fit. What matters is K's standard error,
 * which falls as the masses spread and as the shots become more.
 */
public final class FitAdvice {
  /** The least grains per pound that a wooden bow usually wants (common practice, no source). */
  public static final double LEAST_GPP = 8;

  private static final double HEAVY_GPP = 14;
  private static final double MIDDLE_GPP = 10;

  /**
   * The largest standard error of K that is precise enough, as a share of m + K at the middle
   * arrow. A K wrong by 3 % of m + K makes the speed wrong by half of that, 1.5 %: 2 ft/s in 140,
   * which is what many a rework gains. A vaguer K can't say where such a gain came from. Common
   * practice, no source.
   */
  private static final double VAGUE = 0.03;

  /**
   * The masses are too close where as many shots, well spread, would more than halve K's standard
   * error.
   */
  private static final double MUCH_BETTER = 0.5;

  /** More shots are asked for where they would make K's standard error less by a fifth. */
  private static final double WORTH_WHILE = 1.25;

  private static final double COVERAGE = 0.95;

  private static final double MISSES = 0.05;
  private static final double SHOTS = 5;

  private final BowSums bow;
  private final BowSums lastDay;
  private final double gpp;

  private FitAdvice(BowSums bow, BowSums lastDay, double drawWeightN) {
    this.bow = bow;
    this.lastDay = lastDay;
    this.gpp = drawWeightN * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP;
  }

  /**
   * The advice for a bow; empty where there is nothing to mend.
   *
   * @param lastDay what it shot in its last session: of several, days may bend the curve
   * @param drawWeightN the draw weight, above 0; no arrow lighter than {@link #LEAST_GPP} grains
   *     per pound of it is asked for
   */
  public static List<Advice> of(BowSums bow, BowSums lastDay, double drawWeightN) {
    return new FitAdvice(bow, lastDay, drawWeightN).advice();
  }

  private List<Advice> advice() {
    double[] masses = bow.massesKg();
    if (masses.length == 1) {
      return List.of(new Advice.OneMass(masses[0], farFrom(masses[0])));
    }
    if (bow.shots() < 3) {
      return List.of(new Advice.TooFewShots(bow.shots()));
    }
    Optional<VirtualMassFit> fit = bow.fit();
    if (fit.isEmpty()) {
      return List.of(new Advice.HeavierNotSlower());
    }
    return fitted(fit.get(), masses);
  }

  private List<Advice> fitted(VirtualMassFit fit, double[] masses) {
    List<Advice> advice = new ArrayList<>();
    if (masses.length == 2) {
      advice.add(new Advice.TwoMasses((masses[0] + masses[1]) / 2));
    }
    if (fit.repeats().shots() == masses.length) {
      advice.add(new Advice.NoRepeats());
    }
    if (fit.virtualMassKg() <= 0) {
      advice.add(new Advice.VirtualMassBelowZero(LEAST_GPP * gpp, HEAVY_GPP * gpp));
    } else {
      precision(fit, masses[masses.length / 2]).ifPresent(advice::add);
      notToldFromZero(fit).ifPresent(advice::add);
    }
    lastDay
        .fit()
        .flatMap(LackOfFit::of)
        .filter(lack -> lack.pValue() < MISSES)
        .ifPresent(lack -> advice.add(new Advice.CurveMisses(lack.pValue())));
    return advice;
  }

  private Optional<Advice> precision(VirtualMassFit fit, double middleKg) {
    double se = fit.virtualMassSe();
    double wanted = VAGUE * (middleKg + fit.virtualMassKg());
    if (se <= WORTH_WHILE * wanted) {
      return Optional.empty();
    }
    Repeats repeats = fit.repeats();
    double light = LEAST_GPP * gpp;
    double heavy = HEAVY_GPP * gpp;
    double[] spread = {light, (light + heavy) / 2, heavy};
    double[] asMany = {repeats.shots() / 3.0, repeats.shots() / 3.0, repeats.shots() / 3.0};
    if (expected(fit, spread, asMany) < MUCH_BETTER * se) {
      double joined = seWith(fit, light, heavy);
      return Optional.of(new Advice.TooCloseTogether(se, light, heavy, joined));
    }
    double each = (double) repeats.shots() / repeats.masses();
    int more = (int) Math.ceil(each * se * se / (wanted * wanted));
    return Optional.of(new Advice.TooFewRepeats(se, more, wanted));
  }

  private static Optional<Advice> notToldFromZero(VirtualMassFit fit) {
    double k = fit.virtualMassKg();
    double reach = StudentT.twoSided(COVERAGE, fit.degreesOfFreedom()) * fit.virtualMassSe();
    return k > reach
        ? Optional.empty()
        : Optional.of(new Advice.NotToldFromZero(k, k - reach, k + reach));
  }

  /** K's standard error if five shots with each of two more masses joined those already made. */
  private static double seWith(VirtualMassFit fit, double light, double heavy) {
    Repeats repeats = fit.repeats();
    int n = repeats.masses();
    double[] masses = Arrays.copyOf(repeats.massKg(), n + 2);
    double[] shots =
        Arrays.copyOf(Arrays.stream(repeats.count()).asDoubleStream().toArray(), n + 2);
    masses[n] = light;
    masses[n + 1] = heavy;
    shots[n] = SHOTS;
    shots[n + 1] = SHOTS;
    return expected(fit, masses, shots);
  }

  private static double expected(VirtualMassFit fit, double[] masses, double[] shots) {
    return DesignPrecision.of(
            fit.energyJ(), fit.virtualMassKg(), masses, shots, fit.residualSdMps())
        .virtualMassSe();
  }

  private double farFrom(double massKg) {
    return massKg > MIDDLE_GPP * gpp ? LEAST_GPP * gpp : HEAVY_GPP * gpp;
  }
}
