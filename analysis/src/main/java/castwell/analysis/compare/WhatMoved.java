package castwell.analysis.compare;

import castwell.analysis.bow.VirtualMass;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * Which of a bow's two numbers changed in a rework: the energy that it hands over, the virtual mass
 * of its limbs and string, or both, as far as that can be told.
 *
 * <p>The two are strongly correlated, so both changes are first tested together: Wald's d' C^-1 d /
 * 2 against F with 2 and the lesser effective degrees of freedom (by reasoning: the safe side).
 * Only when that shows something is each tested alone. At a level of 5 %, a change is reported for
 * at most 5 % of bows that didn't change, and a change of the other number for at most 5 % of bows
 * of which only one changed (closed testing: Marcus, Peritz and Gabriel, Biometrika 63 (1976) 655,
 * from memory).
 *
 * @param energyJ the change of E, after less before
 * @param virtualMassKg the change of K, after less before
 * @param jointP the p value of the hypothesis that neither changed; 1 where the changes have no
 *     uncertainty to be tested against, or none apart from each other
 */
public record WhatMoved(Quantity energyJ, Quantity virtualMassKg, double jointP, Answer answer) {
  private static final double ALPHA = 0.05;

  /** What can be said of the change. */
  public enum Answer {
    /** The energy changed; no change of the virtual mass is shown. */
    ENERGY,
    /** The virtual mass changed; no change of the energy is shown. */
    VIRTUAL_MASS,
    BOTH,
    /** One of them changed, or both, and it can't be told which. */
    SOMETHING,
    NOTHING_SHOWN
  }

  /**
   * @param daySpeedRatio the speeds of untouched bows, after over before, 1 where nothing is known;
   *     the energy is corrected by the square of it
   */
  public static WhatMoved between(VirtualMass before, VirtualMass after, Quantity daySpeedRatio) {
    Quantity corrected = after.energyJ().dividedBy(daySpeedRatio).dividedBy(daySpeedRatio);
    Quantity energy = corrected.minus(before.energyJ());
    Quantity mass = after.virtualMassKg().minus(before.virtualMassKg());
    double p = jointP(energy, mass);
    return new WhatMoved(energy, mass, p, answer(energy, mass, p));
  }

  private static Answer answer(Quantity energy, Quantity mass, double jointP) {
    if (!(jointP < ALPHA)) {
      return Answer.NOTHING_SHOWN;
    }
    boolean energyMoved = energy.pValue() < ALPHA;
    boolean massMoved = mass.pValue() < ALPHA;
    if (energyMoved && massMoved) {
      return Answer.BOTH;
    }
    return energyMoved ? Answer.ENERGY : massMoved ? Answer.VIRTUAL_MASS : Answer.SOMETHING;
  }

  /**
   * Uses standardised changes, so that an energy of unbounded uncertainty still leaves the virtual
   * mass its weight.
   */
  private static double jointP(Quantity a, Quantity b) {
    double x = a.value() / a.standardUncertainty();
    double y = b.value() / b.standardUncertainty();
    double r =
        covariance(a.contributions(), b.contributions())
            / a.standardUncertainty()
            / b.standardUncertainty();
    double wald = (x * x - 2 * r * x * y + y * y) / (1 - r * r);
    if (!Double.isFinite(wald)) {
      return 1;
    }
    double degrees = Math.min(a.effectiveDegreesOfFreedom(), b.effectiveDegreesOfFreedom());
    return 1 - new FDistribution(2, Math.min(degrees, 1e6)).cumulativeProbability(wald / 2);
  }

  private static double covariance(Map<Source, Double> a, Map<Source, Double> b) {
    Set<Source> sources = new LinkedHashSet<>(a.keySet());
    sources.retainAll(b.keySet());
    return sources.stream().mapToDouble(source -> a.get(source) * b.get(source)).sum();
  }
}
