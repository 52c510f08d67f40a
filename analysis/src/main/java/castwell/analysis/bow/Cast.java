package castwell.analysis.bow;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import castwell.analysis.unit.Units;

/**
 * How well a bow throws: the speed, in m/s, of an arrow of so many grains per pound, m = gpp W (the
 * trade's yardstick, common practice), by the virtual-mass model. NaN where m + K isn't above 0.
 *
 * @param massKg that arrow's mass
 * @param speedMps its speed, with the mass taken as exact
 * @param withScaleMps the same speed, with the error of the draw weight's scale carried through the
 *     mass as well
 */
public record Cast(double gpp, double massKg, Quantity speedMps, Quantity withScaleMps) {

  /**
   * @param gpp grains of arrow per pound of draw weight, above 0
   * @param drawWeightN the draw weight, above 0
   * @param scaleUN the draw weight's standard uncertainty
   * @param weighing the name of the weighing; two bows of one weighing share its error
   */
  public static Cast at(
      VirtualMass bow, double gpp, double drawWeightN, double scaleUN, String weighing) {
    double perNewton = gpp * Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP;
    Quantity weight =
        Quantity.of(drawWeightN, scaleUN, Source.common("draw weight of " + weighing));
    double massKg = perNewton * drawWeightN;
    return new Cast(
        gpp, massKg, bow.speedMps(Quantity.exact(massKg)), bow.speedMps(weight.times(perNewton)));
  }
}
