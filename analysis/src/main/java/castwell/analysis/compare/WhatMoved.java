package castwell.analysis.compare;

import castwell.analysis.bow.VirtualMass;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * Which of a bow's two numbers moved in a rework: the energy that it hands over, the virtual mass
 * that it keeps moving, both, or can't tell.
 *
 * <p>The two are strongly correlated, so first both changes are tested together: Wald's d' C^-1 d /
 * 2 against F with 2 and the lesser effective degrees of freedom (by reasoning: the safe side).
 * Only when that shows something is each looked at alone. At 5 %: of bows with nothing done to them
 * no more than that are told of a change, and of bows with one number changed no more that the
 * other did (closed testing: Marcus, Peritz and Gabriel, Biometrika 63 (1976) 655, from memory).
 *
 * @param energyJ after less before
 * @param virtualMassKg after less before
 * @param jointP of the hypothesis that neither changed; 1 where the changes have no uncertainty to
 *     be tested against, or none apart from each other
 */
public record WhatMoved(Quantity energyJ, Quantity virtualMassKg, double jointP, Answer answer) {
  private static final double ALPHA = 0.05;

  /** What can be said. */
  public enum Answer {
    /** The virtual mass can't be told from what it was. */
    ENERGY,
    /** The energy can't be told from what it was. */
    VIRTUAL_MASS,
    BOTH,
    /** One of them or both. */
    SOMETHING,
    NOTHING_SHOWN
  }

  /**
   * @param daySpeedRatio speeds of untouched bows, after over before, 1 where nothing is known: the
   *     energy is corrected by its square
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

  /** By standardised changes, so that an energy without any bound leaves the virtual mass's say. */
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
