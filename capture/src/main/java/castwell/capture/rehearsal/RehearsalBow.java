package castwell.capture.rehearsal;

/**
 * An invented bow.
 *
 * @param drawWeightN the draw weight at the draw length
 * @param drawLengthM the distance from the nock groove to the grip's pivot point, plus 1 3/4 in
 * @param energyJ the energy that it hands over to arrow and virtual mass together
 * @param virtualMassKg the energy that limbs and string keep, told as a mass that moves at arrow
 *     speed
 * @param lastDone the last work on it
 */
public record RehearsalBow(
    String name,
    String wood,
    double drawWeightN,
    double drawLengthM,
    double energyJ,
    double virtualMassKg,
    String lastDone) {

  /**
   * The speed it gives an arrow: energy = (arrow mass + virtual mass) speed^2 / 2.
   *
   * <p>Source: Klopsteg, Am. J. Phys. 11 (1943) 175.
   */
  public double speedMps(RehearsalArrow arrow) {
    return Math.sqrt(2 * energyJ / (arrow.massKg() + virtualMassKg));
  }
}
