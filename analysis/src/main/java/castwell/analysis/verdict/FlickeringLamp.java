package castwell.analysis.verdict;

import castwell.analysis.shot.Gate;
import castwell.analysis.wording.Phrase;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A gate went dark in step, as under a lamp that flickers, and no arrow was there. */
final class FlickeringLamp implements Rule {
  @Override
  public Optional<Reason> judge(Evidence evidence) {
    Map<Gate, Double> hz = evidence.reading().flickerHz();
    List<Phrase> told =
        hz.keySet().stream()
            .sorted()
            .map(gate -> Phrase.of("verdict.flicker", gate, Math.round(hz.get(gate))))
            .toList();
    return told.isEmpty() ? Optional.empty() : Optional.of(new Reason("flickering-lamp", told));
  }
}
