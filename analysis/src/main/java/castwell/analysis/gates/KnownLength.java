package castwell.analysis.gates;

/**
 * An arrow's length as somebody measured it.
 *
 * @param arrow what tells the arrow from others
 * @param m the length in metres, above 0
 * @param uM its standard uncertainty in metres, at least 0; each arrow has an error of its own
 */
public record KnownLength(String arrow, double m, double uM) {
  /**
   * The standard uncertainty of a length read off a tape: half a millimetre at the point, the rest
   * at the nock's throat (assumed).
   */
  public static final double TAPE_UM = 0.001;

  /**
   * @throws IllegalArgumentException for a length or an uncertainty out of its range
   */
  public KnownLength {
    if (!(m > 0 && uM >= 0)) {
      throw new IllegalArgumentException(
          "an arrow's length is above 0 m and its uncertainty at least 0 m, not %s and %s"
              .formatted(m, uM));
    }
  }
}
