package castwell.analysis.season;

import java.util.Map;

/**
 * A condition that may move all bows' speeds alike from session to session, such as the air's
 * temperature: by so much for each unit more, on the log of the speed.
 *
 * <p>It counts from the mean of the sessions that have a value, so that a typical day is one as
 * these were, and no cast moves only because a condition begins to be looked at. A session without
 * a value is taken for such a one.
 *
 * @param name by which its effect is asked for
 * @param effectSd the effect of one unit is N(0, effectSd^2) beforehand, above 0
 * @param bySession the values of all sessions that have one, whether or not they have cells here
 */
public record Covariate(String name, double effectSd, Map<String, Double> bySession) {
  private static final int FEWEST = 6;
  private static final double ASSUMED_SD = 0.002;
  private static final double HUMIDITY_PERCENT = 10;

  public Covariate {
    bySession = Map.copyOf(bySession);
    if (!(effectSd > 0) || !bySession.values().stream().allMatch(Double::isFinite)) {
      throw new IllegalArgumentException("no covariate of a season: " + name);
    }
  }

  /** The air's, in degrees C; 0.2 % for each (assumed). */
  public static Covariate temperature(Map<String, Double> celsius) {
    return new Covariate("temperature", ASSUMED_SD, celsius);
  }

  /** The wood's, in percent of its dry mass; 0.2 % for each (assumed). */
  public static Covariate woodMoisture(Map<String, Double> percent) {
    return new Covariate("wood moisture", ASSUMED_SD, percent);
  }

  /** The air's relative humidity in percent; 0.2 % for each ten (assumed). */
  public static Covariate humidity(Map<String, Double> percent) {
    return new Covariate("humidity", ASSUMED_SD / HUMIDITY_PERCENT, percent);
  }

  /** What strings had on, in a unit of the caller's; 0.2 % for each (assumed). */
  public static Covariate stringWear(Map<String, Double> worn) {
    return new Covariate("string wear", ASSUMED_SD, worn);
  }

  /** Whether at least six sessions have a value, and not all the same. */
  public boolean isTold() {
    return bySession.size() >= FEWEST && bySession.values().stream().distinct().count() > 1;
  }

  /** Over all sessions that have a value; sorted, so that it is the same at every run. */
  double mean() {
    return bySession.values().stream().mapToDouble(v -> v).sorted().average().orElse(0);
  }
}
