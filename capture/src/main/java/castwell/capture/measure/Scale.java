package castwell.capture.measure;

/** In what the trade takes a number; how finely each is shown is the page's business. */
public enum Scale {
  /** Of a draw, or a bow from nock to nock. */
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

  /** All units in which a sheet may tell it. */
  public UnitFamily family() {
    return family;
  }

  /** The trade's unit, as headings and fields end. */
  public String ending() {
    return ending;
  }

  /** The trade's unit in plain words. */
  public String unit() {
    return unit;
  }

  /** How many SI units the trade's is. */
  public double si() {
    return si(ending);
  }

  double si(String ending) {
    return family.units().get(ending);
  }
}
