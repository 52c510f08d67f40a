package castwell.capture.assembly;

import castwell.analysis.reading.ClusterCut;
import castwell.analysis.reading.Knowledge;
import castwell.analysis.reading.Limits;
import castwell.analysis.reading.Separation;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import java.time.Duration;
import java.util.List;

/**
 * What tells an assembler how long an arrow takes through the gates, and which edges are one
 * arrow's.
 *
 * @param hz the board's nominal tick rate
 */
public record Gates(Calibration calibration, Limits limits, StampLatency latency, double hz) {

  /**
   * How a stream of edges is cut to what is read together.
   *
   * @param quiet the least silence that closes what both gates have let go
   */
  ClusterCut cut(Duration quiet) {
    return new ClusterCut(calibration.spacingM(), limits, quiet.toNanos() * 1e-9);
  }

  /** Parts what went through at once: each arrow that is surely one becomes a passage. */
  List<Passage> separate(Passage cluster) {
    TickRate rate = TickRate.nominal(hz, calibration.oscillator());
    return Separation.separate(cluster, Knowledge.of(calibration, limits), rate, latency);
  }
}
