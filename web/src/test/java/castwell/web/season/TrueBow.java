package castwell.web.season;

import castwell.analysis.unit.Units;
import java.util.Random;

/** A bow as it truly is, on a typical day. */
record TrueBow(String name, double drawWeightLb, double energyJ, double virtualMassGr) {
  /** Virtual masses of 70 to 200 gr; 150 to 185 ft/s with an arrow of 500 gr. */
  static TrueBow any(String name, Random random) {
    double virtualMassGr = random.nextDouble(70, 200);
    double mps = random.nextDouble(150, 185) * Units.METRES_PER_FOOT;
    double energyJ = (500 + virtualMassGr) * Units.KILOGRAMS_PER_GRAIN * mps * mps / 2;
    return new TrueBow(name, random.nextInt(40, 61), energyJ, virtualMassGr);
  }

  /** The same by a share of the speed with every arrow. */
  TrueBow fasterBy(double log) {
    return new TrueBow(name, drawWeightLb, energyJ * Math.exp(2 * log), virtualMassGr);
  }

  /** v = sqrt(2 E / (m + K)). */
  double fps(double massGr) {
    double kg = (massGr + virtualMassGr) * Units.KILOGRAMS_PER_GRAIN;
    return Math.sqrt(2 * energyJ / kg) / Units.METRES_PER_FOOT;
  }

  double energyFtlbf() {
    return energyJ / Units.JOULES_PER_FOOT_POUND;
  }

  /** What an arrow carries. */
  double carriedFtlbf(double massGr) {
    return energyFtlbf() * massGr / (massGr + virtualMassGr);
  }
}
