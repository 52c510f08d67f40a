package castwell.analysis.verdict;

import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import castwell.analysis.speed.Flight;
import castwell.analysis.speed.SpeedMeter;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import castwell.analysis.wording.Phrase;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

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

  /** What is told of the first reason, before it is put into words. */
  static String told(Passage passage) {
    return Judge.judge(evidence(passage)).reasons().get(0).told().stream()
        .map(Phrase::written)
        .collect(Collectors.joining(" "));
  }

  static String told(String edges) {
    return told(Passages.of(edges));
  }
}
