package castwell.web.unit;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_NEWTON_OF_ONE_GPP;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_POUND;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.analysis.unit.Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;

import castwell.capture.measure.Scale;

/** The kinds of quantity that are shown, each with its unit in the trade and in SI. */
public enum Dimension {
  SPEED(new Unit("ft/s", METRES_PER_FOOT, 1), new Unit("m/s", 1, 2)),
  ARROW_MASS(new Unit("gr", KILOGRAMS_PER_GRAIN, 0), new Unit("g", 1e-3, 2)),
  BOW_MASS(new Unit("lb", KILOGRAMS_PER_POUND, 2), new Unit("kg", 1, 3)),
  FORCE(new Unit("lb", NEWTONS_PER_POUND, 1), new Unit("N", 1, 0)),
  ENERGY(new Unit("ft·lbf", JOULES_PER_FOOT_POUND, 1), new Unit("J", 1, 1)),
  MOMENTUM(
      new Unit("slug·ft/s", NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND, 3), new Unit("kg·m/s", 1, 3)),
  /** The length of a draw, or of a bow from nock to nock. */
  DRAW_LENGTH(new Unit("in", METRES_PER_INCH, 1), new Unit("cm", 1e-2, 1)),
  /** The length of an arrow, a brace height, or string follow. */
  LENGTH(new Unit("in", METRES_PER_INCH, 2), new Unit("mm", 1e-3, 0)),
  DIAMETER(new Unit("in", METRES_PER_INCH, 3), new Unit("mm", 1e-3, 1)),
  /** A length that the trade measures in millimetres too: of tips, or between the gates. */
  FINE_LENGTH(new Unit("mm", 1e-3, 1), new Unit("mm", 1e-3, 1)),
  /** The deflection of an arrow's shaft under a weight. */
  DEFLECTION(new Unit("mil", METRES_PER_INCH / 1000, 0), new Unit("mm", 1e-3, 2)),
  /** The weight that bends a shaft. */
  LOAD(new Unit("lb", NEWTONS_PER_POUND, 2), new Unit("N", 1, 2)),
  DISTANCE(new Unit("ft", METRES_PER_FOOT, 1), new Unit("m", 1, 2)),
  /** Arrow mass for draw weight; makers everywhere speak of grains per pound. */
  MASS_FOR_WEIGHT(
      new Unit("gpp", KILOGRAMS_PER_NEWTON_OF_ONE_GPP, 1),
      new Unit("gpp", KILOGRAMS_PER_NEWTON_OF_ONE_GPP, 1)),
  SHARE(new Unit("%", 1e-2, 0), new Unit("%", 1e-2, 0)),
  DURATION(new Unit("ms", 1e-3, 2), new Unit("ms", 1e-3, 2));

  private final Unit trade;
  private final Unit si;

  Dimension(Unit trade, Unit si) {
    this.trade = trade;
    this.si = si;
  }

  /** The dimension in which a measure of a bow or an arrow is shown. */
  public static Dimension of(Scale scale) {
    return switch (scale) {
      case DRAW_LENGTH -> DRAW_LENGTH;
      case LENGTH -> LENGTH;
      case DIAMETER -> DIAMETER;
      case FINE_LENGTH -> FINE_LENGTH;
      case ARROW_MASS -> ARROW_MASS;
      case BOW_MASS -> BOW_MASS;
      case DEFLECTION -> DEFLECTION;
      case LOAD -> LOAD;
    };
  }

  Unit trade() {
    return trade;
  }

  Unit si() {
    return si;
  }
}
