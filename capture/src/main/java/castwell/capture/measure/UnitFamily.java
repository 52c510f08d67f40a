package castwell.capture.measure;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_POUND;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.analysis.unit.Units.STANDARD_GRAVITY;

import java.util.LinkedHashMap;
import java.util.Map;

/** The units of one dimension, by the endings that a sheet's headings may have. */
public enum UnitFamily {
  SPEED("mps") {
    @Override
    public Map<String, Double> units() {
      return inOrder(
          unit("fps", METRES_PER_FOOT),
          unit("mps", 1),
          unit("kmh", 1 / 3.6),
          unit("mph", METRES_PER_FOOT * 5280 / 3600));
    }
  },
  MASS("kg") {
    @Override
    public Map<String, Double> units() {
      return inOrder(
          unit("gr", KILOGRAMS_PER_GRAIN),
          unit("g", 1e-3),
          unit("kg", 1),
          unit("oz", KILOGRAMS_PER_POUND / 16),
          unit("lb", KILOGRAMS_PER_POUND));
    }
  },
  /**
   * One kilogram-force is standard gravity acting on a kilogram (NIST SP 811 (2008), appendix B.8).
   */
  FORCE("n") {
    @Override
    public Map<String, Double> units() {
      return inOrder(unit("lb", NEWTONS_PER_POUND), unit("n", 1), unit("kgf", STANDARD_GRAVITY));
    }
  },
  LENGTH("m") {
    @Override
    public Map<String, Double> units() {
      return inOrder(
          unit("in", METRES_PER_INCH),
          unit("ft", METRES_PER_FOOT),
          unit("mm", 1e-3),
          unit("cm", 1e-2),
          unit("m", 1));
    }
  },
  /** One mil is a thousandth of an inch (NIST SP 811 (2008), appendix B.8). */
  DEFLECTION("m") {
    @Override
    public Map<String, Double> units() {
      return inOrder(
          unit("mil", METRES_PER_INCH / 1000), unit("in", METRES_PER_INCH), unit("mm", 1e-3));
    }
  };

  private final String si;

  UnitFamily(String si) {
    this.si = si;
  }

  /** The ending for the SI unit. */
  String si() {
    return si;
  }

  /** The endings that a heading may have, each with the SI value of its unit. */
  public abstract Map<String, Double> units();

  private static Map.Entry<String, Double> unit(String ending, double si) {
    return Map.entry(ending, si);
  }

  @SafeVarargs
  private static Map<String, Double> inOrder(Map.Entry<String, Double>... units) {
    Map<String, Double> all = new LinkedHashMap<>();
    for (Map.Entry<String, Double> unit : units) {
      all.put(unit.getKey(), unit.getValue());
    }
    return all;
  }
}
