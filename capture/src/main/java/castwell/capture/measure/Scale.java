package castwell.capture.measure;

/** The units in which the trade takes numbers. How finely each is shown is decided by the pages. */
public enum Scale {
  /** The length of a draw, or of a bow from nock to nock. */
  DRAW_LENGTH(UnitFamily.LENGTH, "in", "inch"),
  LENGTH(UnitFamily.LENGTH, "in", "inch"),
  DIAMETER(UnitFamily.LENGTH, "in", "inch"),
  FINE_LENGTH(UnitFamily.LENGTH, "mm", "millimetre"),
  ARROW_MASS(UnitFamily.MASS, "gr", "grain"),
  BOW_MASS(UnitFamily.MASS, "lb", "pound"),
  DEFLECTION(UnitFamily.DEFLECTION, "mil", "thousandths of an inch"),
  LOAD(UnitFamily.FORCE, "lb", "pound-force");

  private final UnitFamily family;
  private final String ending;
  private final String unit;

  Scale(UnitFamily family, String ending, String unit) {
    this.family = family;
    this.ending = ending;
    this.unit = unit;
  }

  /** All units that a sheet may use for it. */
  public UnitFamily family() {
    return family;
  }

  /** The ending that headings and fields have for the trade's unit. */
  public String ending() {
    return ending;
  }

  /** The trade's unit in plain words. */
  public String unit() {
    return unit;
  }

  /** How many SI units one of the trade's is. */
  public double si() {
    return si(ending);
  }

  double si(String ending) {
    return family.units().get(ending);
  }
}
