package castwell.capture.rehearsal;

/**
 * An invented bow.
 *
 * @param drawWeightN at the draw length
 * @param drawLengthM from the nock groove to the grip's pivot point, plus 1 3/4 in
 * @param energyJ what it hands over to arrow and virtual mass together
 * @param virtualMassKg what limbs and string keep, as mass at arrow speed
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
