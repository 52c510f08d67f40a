package castwell.analysis.verdict;

import castwell.analysis.reading.Knowledge;
import castwell.analysis.reading.Known;
import castwell.analysis.reading.Limits;
import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Flight;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import castwell.analysis.wording.Phrase;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Passages judged as they are: 609.6 mm between the gates, 2 MHz, default limits. */
final class Bench {
  private Bench() {}

  static Assessment assess(Passage passage) {
    return assess(passage, Flight.RATE);
  }

  static Assessment assess(Passage passage, TickRate rate) {
    return assess(passage, Flight.CALIBRATION, rate, Optional.empty());
  }

  static Assessment assess(
      Passage passage, Calibration calibration, TickRate rate, Optional<Known> taggedLengthM) {
    Knowledge knowledge =
        Knowledge.of(calibration, Limits.defaults()).withTaggedLength(taggedLengthM);
    return Assessment.of(passage, knowledge, rate, StampLatency.NONE);
  }

  static List<String> codes(Passage passage) {
    return codes(assess(passage));
  }

  static List<String> codes(Assessment assessment) {
    return assessment.verdict().reasons().stream().map(Reason::code).toList();
  }

  static List<String> codes(String edges) {
    return codes(Passages.of(edges));
  }

  /** What is told of the first reason, before it is put into words. */
  static String told(Passage passage) {
    return assess(passage).verdict().reasons().get(0).told().stream()
        .map(Phrase::written)
        .collect(Collectors.joining(" "));
  }

  static String told(String edges) {
    return told(Passages.of(edges));
  }
}
