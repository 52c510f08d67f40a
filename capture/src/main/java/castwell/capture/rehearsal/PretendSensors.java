package castwell.capture.rehearsal;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import java.util.Map;
import java.util.Random;

/** The light, supply and weather at the pretended gates, on a day that slowly warms and cools. */
record PretendSensors(Random random) {

  /** The last six fields of a heartbeat. */
  String fields(double seconds, Map<Gate, EdgeKind> levels) {
    double warmth = Math.sin(2 * Math.PI * seconds / 3600);
    int airCentiC = noisy(1850 + 150 * warmth, 3);
    return light(levels.get(Gate.A), 812)
        + ","
        + light(levels.get(Gate.B), 807)
        + ","
        + noisy(5012, 4)
        + ","
        + (airCentiC + noisy(310, 5))
        + ","
        + airCentiC
        + ","
        + noisy(5510 - 400 * warmth, 8);
  }

  private int light(EdgeKind level, int clear) {
    return noisy(level == EdgeKind.CLEAR ? clear : 140, 3);
  }

  private int noisy(double middle, double deviation) {
    return (int) Math.round(middle + deviation * random.nextGaussian());
  }
}
