package castwell.analysis.verdict;

import castwell.analysis.reading.ArrowRead;
import castwell.analysis.reading.Knowledge;
import castwell.analysis.reading.Reader;
import castwell.analysis.reading.Reading;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Ends;
import castwell.analysis.speed.Measurement;
import castwell.analysis.speed.SpeedMeter;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import castwell.analysis.wording.Phrase;
import java.util.List;

/**
 * A passage read, measured and judged.
 *
 * @param notes what there is to tell of an arrow that counts: what else its gates saw, and where
 *     its front and its tail contradict
 */
public record Assessment(
    Reading reading, Measurement measurement, Verdict verdict, List<Phrase> notes) {
  public Assessment {
    notes = List.copyOf(notes);
  }

  public static Assessment of(
      Passage passage, Knowledge knowledge, TickRate rate, StampLatency latency) {
    Reading reading = Reader.read(passage, knowledge, rate, latency);
    Measurement measurement = measure(passage, reading, knowledge, rate, latency);
    Evidence evidence = new Evidence(passage, reading, measurement, knowledge, rate);
    Verdict verdict = Judge.judge(evidence);
    List<Phrase> notes = verdict.counts() ? Notes.of(evidence) : List.of();
    return new Assessment(reading, measurement, verdict, notes);
  }

  private static Measurement measure(
      Passage passage, Reading reading, Knowledge knowledge, TickRate rate, StampLatency latency) {
    if (reading.arrow().isEmpty()) {
      return SpeedMeter.measure(passage, knowledge.calibration(), rate, latency);
    }
    ArrowRead arrow = reading.arrow().get();
    Ends ends = arrow.ends();
    return arrow.isWhole()
        ? SpeedMeter.measure(ends, arrow.speed(), knowledge.calibration(), rate, latency)
        : SpeedMeter.measure(ends, knowledge.calibration(), rate, latency);
  }
}
