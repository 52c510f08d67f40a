package castwell.analysis.compare;

import castwell.analysis.bow.DesignPrecision;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The three masses that tell a bow's virtual mass best, and how well they would.
 *
 * @param massesKg the masses, the lightest first
 */
public record MassChoice(List<Double> massesKg, DesignPrecision precision) {
  /** Rounding must not make 320 grains fall below 8 grains per pound at 40 pounds. */
  private static final double ROUNDING = 1e-9;

  /**
   * The lightest and the heaviest mass, which tell E and K, and the one nearest half-way, which
   * tests the curve. A third mass beside either end would tell K by a sixth to a quarter better,
   * but would test nothing. Empty with fewer than three masses that may be shot.
   *
   * @param atHandKg the masses of the arrows at hand
   * @param leastKg the least mass that may be shot
   * @param sdMps one shot's standard deviation about its mean
   * @param shotsEach the number of shots with each mass
   */
  public static Optional<MassChoice> of(
      List<Double> atHandKg,
      double leastKg,
      double energyJ,
      double virtualMassKg,
      double sdMps,
      double shotsEach) {
    double least = leastKg * (1 - ROUNDING);
    List<Double> masses = atHandKg.stream().filter(m -> m >= least).distinct().sorted().toList();
    if (masses.size() < 3) {
      return Optional.empty();
    }
    double light = masses.get(0);
    double heavy = masses.get(masses.size() - 1);
    double middle = (light + heavy) / 2;
    List<Double> between = new ArrayList<>(masses.subList(1, masses.size() - 1));
    between.sort((a, b) -> Double.compare(Math.abs(a - middle), Math.abs(b - middle)));
    double[] chosen = {light, between.get(0), heavy};
    return Optional.of(
        new MassChoice(
            List.of(light, between.get(0), heavy),
            DesignPrecision.of(
                energyJ,
                virtualMassKg,
                chosen,
                new double[] {shotsEach, shotsEach, shotsEach},
                sdMps)));
  }
}
