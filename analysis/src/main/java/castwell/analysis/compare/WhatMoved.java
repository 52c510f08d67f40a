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
 * Only when that shows something is each looked at alone. At 5 %.
 *
 * @param energyJ after less before
 * @param virtualMassKg after less before
 * @param jointP of the hypothesis that neither changed
 */
public record WhatMoved(Quantity energyJ, Quantity virtualMassKg, double jointP, Answer answer) {
  private static final double ALPHA = 0.05;

  /** What can be said. */
  public enum Answer {
    ENERGY("The energy it hands over changed; its virtual mass can't be told from what it was."),
    VIRTUAL_MASS(
        "Its virtual mass changed; the energy it hands over can't be told from what it was."),
    BOTH("Both the energy it hands over and its virtual mass changed."),
    SOMETHING(
        "Something changed, but these shots can't tell whether it was the energy or the virtual mass: shoot more, with arrows farther apart in mass."),
    NOTHING_SHOWN(
        "These shots can't tell a change of the energy or of the virtual mass: shoot more, with arrows farther apart in mass.");

    private final String sentence;

    Answer(String sentence) {
      this.sentence = sentence;
    }

    public String sentence() {
      return sentence;
    }
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

  private static double jointP(Quantity a, Quantity b) {
    double aa = Math.pow(a.standardUncertainty(), 2);
    double bb = Math.pow(b.standardUncertainty(), 2);
    double ab = covariance(a.contributions(), b.contributions());
    double determinant = aa * bb - ab * ab;
    if (!(determinant > 0)) {
      return 1;
    }
    double wald =
        (a.value() * a.value() * bb - 2 * a.value() * b.value() * ab + b.value() * b.value() * aa)
            / determinant;
    double degrees = Math.min(a.effectiveDegreesOfFreedom(), b.effectiveDegreesOfFreedom());
    return 1 - new FDistribution(2, Math.min(degrees, 1e6)).cumulativeProbability(wald / 2);
  }

  private static double covariance(Map<Source, Double> a, Map<Source, Double> b) {
    Set<Source> sources = new LinkedHashSet<>(a.keySet());
    sources.retainAll(b.keySet());
    return sources.stream().mapToDouble(source -> a.get(source) * b.get(source)).sum();
  }
}
