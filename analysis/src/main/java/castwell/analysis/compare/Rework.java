package castwell.analysis.compare;

import castwell.analysis.season.StateCurve;
import castwell.analysis.season.StateEnergy;
import castwell.analysis.statistic.Holm;
import castwell.analysis.uncertainty.Estimate;
import castwell.analysis.uncertainty.TMixture;
import java.util.Optional;

/**
 * What a rework did to a bow, by its states before and after. Whatever other bows were shot in the
 * sessions of either help to tell the days' part, in the season's own model.
 */
public record Rework(StateCurve before, StateCurve after) {
  private static final double COVERAGE = 0.95;
  private static final double ALPHA = 1 - COVERAGE;

  /** Log speed with one mass after less before: 0.01 is 1 % faster. */
  public TMixture change(double massKg) {
    return after.lessThan(massKg, before, massKg);
  }

  /** The same of the speed itself, as a share of the speed before, with its 95 % interval. */
  public Estimate share(double massKg) {
    return change(massKg).estimate(COVERAGE).rising(Math::expm1);
  }

  /** In m/s, the share of the speed before, which is taken as it stands. */
  public Estimate changeMps(double massKg) {
    double speed = Math.exp(before.logSpeed(massKg).value());
    return share(massKg).rising(share -> share * speed);
  }

  /**
   * The least x with which "no change larger than x", a share of the speed, can be said: the
   * farther end of the 95 % interval, so that the two never disagree. That is two one-sided tests
   * of 2.5 % (Schuirmann, J. Pharmacokin. Biopharm. 15 (1987) 657; from memory), which are safer
   * than his of 5 %.
   */
  public double noChangeLargerThan(double massKg) {
    return share(massKg).interval().largest();
  }

  public Conclusion conclusion(double massKg) {
    return Conclusion.of(share(massKg));
  }

  /**
   * The change of log cast at so many grains per pound, each state at its own draw weight.
   *
   * @param uN standard uncertainty of either draw weight; the two errors have nothing in common
   */
  public TMixture castChange(double gpp, double beforeN, double afterN, double uN) {
    return after.castLess(gpp, afterN, uN, before, beforeN, uN);
  }

  /** Which of a bow's two numbers can be said to have moved. */
  public enum Answer {
    /** The energy; no change of the virtual mass is shown. */
    ENERGY,
    /** The virtual mass; no change of the energy is shown. */
    VIRTUAL_MASS,
    BOTH,
    NOTHING_SHOWN
  }

  /**
   * How energy and virtual mass moved. Each interval is as wide as Holm's rule over the two wants
   * it, so that it leaves out 0 just where its p value is below 0.05.
   *
   * @param energyJ change of E, the share of that before, which is taken as it stands
   * @param virtualMassKg change of K
   * @param energyP p value of E's change, adjusted by Holm over the two
   * @param virtualMassP that of K's
   */
  public record Moved(
      Estimate energyJ, Estimate virtualMassKg, double energyP, double virtualMassP) {

    public Answer answer() {
      boolean energyMoved = energyP < ALPHA;
      boolean massMoved = virtualMassP < ALPHA;
      if (energyMoved && massMoved) {
        return Answer.BOTH;
      }
      return energyMoved ? Answer.ENERGY : massMoved ? Answer.VIRTUAL_MASS : Answer.NOTHING_SHOWN;
    }
  }

  /** Empty where the arrows' masses can't split E from K, before or after. */
  public Optional<Moved> whatMoved() {
    StateEnergy now = after.energy();
    StateEnergy then = before.energy();
    if (!now.isSplit() || !then.isSplit()) {
      return Optional.empty();
    }
    TMixture logEnergy = now.logEnergyLess(then);
    double[] p = {logEnergy.pValue(), now.elasticityLess(then).pValue()};
    double[] adjusted = Holm.adjust(p);
    double[] levels = Holm.levels(ALPHA, p);
    double energyJ = Math.exp(then.logEnergy().value());
    return Optional.of(
        new Moved(
            logEnergy.estimate(1 - levels[0]).rising(log -> energyJ * Math.expm1(log)),
            now.virtualMassLessKg(then, 1 - levels[1]),
            adjusted[0],
            adjusted[1]));
  }
}
