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

  /** Log speed with one mass after less before: 0.01 is 1 % faster. */
  public TMixture change(double massKg) {
    return after.lessThan(massKg, before, massKg);
  }

  /** The same of the speed itself, as a share of the speed before, with its interval. */
  public Estimate share(double massKg, double coverage) {
    return change(massKg).estimate(coverage).rising(Math::expm1);
  }

  /** In m/s, the share of the speed before, which is taken as it stands. */
  public Estimate changeMps(double massKg, double coverage) {
    double speed = Math.exp(before.logSpeed(massKg).value());
    return share(massKg, coverage).rising(share -> share * speed);
  }

  /**
   * The least x with which "no change larger than x", a share of the speed, can be said by two
   * one-sided tests of 5 %.
   */
  public double noChangeLargerThan(double massKg) {
    return Math.expm1(change(massKg).equivalenceLimit());
  }

  /**
   * Which of energy and virtual mass moved.
   *
   * @param logEnergy change of the natural log of E
   * @param elasticity change of e, which falls where K rises
   * @param energyP p value of E's change, adjusted by Holm over the two
   * @param virtualMassP that of K's
   */
  public record Moved(
      TMixture logEnergy, TMixture elasticity, double energyP, double virtualMassP) {}

  /** Empty where the arrows' masses can't split E from K, before or after. */
  public Optional<Moved> whatMoved() {
    StateEnergy now = after.energy();
    StateEnergy then = before.energy();
    if (!now.isSplit() || !then.isSplit()) {
      return Optional.empty();
    }
    TMixture logEnergy = now.logEnergyLess(then);
    TMixture elasticity = now.elasticityLess(then);
    double[] p = Holm.adjust(logEnergy.pValue(), elasticity.pValue());
    return Optional.of(new Moved(logEnergy, elasticity, p[0], p[1]));
  }
}
