package castwell.analysis.season;

import castwell.analysis.unit.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Shots of several bows over several sessions, whose truth is known. */
final class SimulatedSeason {
  /** What days, bows' days, arrows and shots do: relative standard deviations. */
  record Errors(
      double day, double bowDay, double arrow, double shot, double setUp, double massGr) {}

  private static final double MEAN_MPS = 50;

  private final Random random;
  private final Errors errors;
  private final double[] massGr;
  private final double[] errorGr;
  private final double[] virtualGr;
  private final double[] logAt500;
  private final double[] shotSd;
  private final double[][] effects;
  private final List<SeasonCell> cells = new ArrayList<>();
  private final List<double[]> logSpeeds = new ArrayList<>();
  private int sessions;

  SimulatedSeason(Random random, Errors errors, int bows, double... massGr) {
    this.random = random;
    this.errors = errors;
    this.massGr = massGr.clone();
    errorGr = new double[massGr.length];
    virtualGr = new double[bows];
    logAt500 = new double[bows];
    shotSd = new double[bows];
    effects = new double[bows][massGr.length];
    for (int a = 0; a < massGr.length; a++) {
      errorGr[a] = normal(errors.massGr());
    }
    for (int b = 0; b < bows; b++) {
      virtualGr[b] = 70 + 130 * random.nextDouble();
      logAt500[b] = Math.log(MEAN_MPS) - 0.15 + 0.3 * random.nextDouble();
      shotSd[b] = errors.shot() * Math.exp(normal(0.25));
      for (int a = 0; a < massGr.length; a++) {
        effects[b][a] = normal(errors.arrow());
      }
    }
  }

  private double normal(double sd) {
    return sd * random.nextGaussian();
  }

  /** A bow that is shot, as a state of it that is so much faster than at first. */
  record Shot(int bow, String state, double change) {
    static Shot of(int bow) {
      return new Shot(bow, "bow " + bow, 0);
    }
  }

  /**
   * One more session: all arrows from each of these bows, some shots each. Returns what its day did
   * to all of them.
   */
  double session(int shots, Shot... shot) {
    double day = normal(errors.day()) + normal(errors.setUp());
    String name = "session " + sessions++;
    double[] bowDay = new double[virtualGr.length];
    for (int b = 0; b < bowDay.length; b++) {
      bowDay[b] = normal(errors.bowDay());
    }
    for (Shot one : shot) {
      for (int a = 0; a < massGr.length; a++) {
        double expected =
            logSpeed(one.bow(), massGr[a] + errorGr[a])
                + one.change()
                + day
                + bowDay[one.bow()]
                + effects[one.bow()][a];
        cells.add(cell(one, a, name, expected, shots));
      }
    }
    return day;
  }

  private SeasonCell cell(Shot shot, int arrow, String session, double expected, int shots) {
    double[] logs = new double[shots];
    double sum = 0;
    for (int i = 0; i < shots; i++) {
      logs[i] = expected + normal(shotSd[shot.bow()]);
      sum += logs[i];
    }
    double mean = sum / shots;
    double squares = 0;
    for (double log : logs) {
      squares += (log - mean) * (log - mean);
    }
    logSpeeds.add(logs);
    return new SeasonCell(
        "bow " + shot.bow(),
        shot.state(),
        "arrow " + arrow,
        "bow " + shot.bow(),
        massGr[arrow] * Units.KILOGRAMS_PER_GRAIN,
        errors.massGr() * Units.KILOGRAMS_PER_GRAIN,
        session,
        errors.setUp(),
        shots,
        mean,
        squares);
  }

  List<SeasonCell> cells() {
    return List.copyOf(cells);
  }

  /** The shots of each of the cells. */
  List<double[]> logSpeeds() {
    return List.copyOf(logSpeeds);
  }

  /** The truth of a bow's first state. */
  double logSpeed(int bow, double grains) {
    return logAt500[bow] + Math.log((500 + virtualGr[bow]) / (grains + virtualGr[bow])) / 2;
  }

  double virtualMassKg(int bow) {
    return virtualGr[bow] * Units.KILOGRAMS_PER_GRAIN;
  }

  double logEnergy(int bow) {
    double kg = (500 + virtualGr[bow]) * Units.KILOGRAMS_PER_GRAIN;
    return Math.log(kg / 2) + 2 * logAt500[bow];
  }
}
