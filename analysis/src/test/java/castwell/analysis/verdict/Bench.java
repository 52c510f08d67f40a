package castwell.analysis.verdict;

import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import castwell.analysis.speed.Flight;
import castwell.analysis.speed.SpeedMeter;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import java.util.List;
import java.util.OptionalDouble;

/** Passages judged as they are: 609.6 mm between the gates, 2 MHz, default limits. */
final class Bench {
  private Bench() {}

  static Evidence evidence(Passage passage) {
    return evidence(passage, Flight.RATE, OptionalDouble.empty());
  }

  static Evidence evidence(Passage passage, TickRate rate, OptionalDouble taggedLengthM) {
    return new Evidence(
        passage,
        SpeedMeter.measure(passage, Flight.CALIBRATION, rate, StampLatency.NONE),
        rate,
        Limits.defaults(),
        taggedLengthM);
  }

  static List<String> codes(Passage passage) {
    return Judge.judge(evidence(passage)).reasons().stream().map(Reason::code).toList();
  }

  static List<String> codes(String edges) {
    return codes(Passages.of(edges));
  }

  /** The first reason's sentence. */
  static String sentence(Passage passage) {
    return Judge.judge(evidence(passage)).reasons().get(0).sentence();
  }

  static String sentence(String edges) {
    return sentence(Passages.of(edges));
  }
}
