package castwell.capture.derive;

import castwell.analysis.reading.ArrowRead;
import castwell.analysis.reading.Part;
import castwell.analysis.reading.Reading;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.speed.Measurement;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.verdict.Assessment;
import castwell.analysis.verdict.Judge;
import castwell.analysis.verdict.Verdict;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Conditions;
import castwell.capture.store.Conditions.Strays;
import castwell.capture.store.Figure;
import java.util.Optional;
import java.util.OptionalDouble;

/** What is stored of an assessment. */
final class FigureOf {
  private FigureOf() {}

  static Figure assessment(
      long passageId,
      Calibrations.Entry calibration,
      Conditions conditions,
      Passage passage,
      Assessment assessment) {
    Measurement m = assessment.measurement();
    double spacingM = calibration.calibration().spacingM();
    Verdict verdict = assessment.verdict();
    boolean clean = verdict.counts();
    return new Figure(
        passageId,
        calibration.id(),
        Judge.RULES_VERSION,
        conditions,
        value(m.speed()),
        part(m.speed(), Kind.OWN),
        common(m.speed(), conditions.gates().tailLateUM() / spacingM),
        value(m.front()),
        uncertainty(m.front()),
        value(m.tail()),
        uncertainty(m.tail()),
        value(m.length()),
        uncertainty(m.length()),
        assessment.reading().arrow().stream().mapToDouble(ArrowRead::marginNats).findFirst(),
        new Strays(
            strays(passage, assessment.reading(), Gate.A),
            strays(passage, assessment.reading(), Gate.B)),
        clean,
        clean ? "clean" : verdict.reasons().get(0).code(),
        Figure.written(verdict.reasons().stream().flatMap(r -> r.told().stream()).toList()));
  }

  /** How often a gate was blocked by something that no arrow explains. */
  private static int strays(Passage passage, Reading reading, Gate gate) {
    return (int)
        passage.edges().stream()
            .filter(edge -> edge.gate() == gate && edge.kind() != EdgeKind.CLEAR)
            .filter(edge -> isStray(reading.parts().get(edge.number())))
            .count();
  }

  private static boolean isStray(Part part) {
    return part == Part.OTHER || part == Part.UNKNOWN || part == Part.LAMP;
  }

  /** The common uncertainty, with the share of it that the session's tails add. */
  private static OptionalDouble common(Optional<Quantity> speed, double share) {
    return speed.stream()
        .mapToDouble(v -> Math.hypot(v.standardUncertainty(Kind.COMMON), v.value() * share))
        .findFirst();
  }

  private static OptionalDouble value(Optional<Quantity> quantity) {
    return quantity.stream().mapToDouble(Quantity::value).findFirst();
  }

  private static OptionalDouble uncertainty(Optional<Quantity> quantity) {
    return quantity.stream().mapToDouble(Quantity::standardUncertainty).findFirst();
  }

  private static OptionalDouble part(Optional<Quantity> quantity, Kind kind) {
    return quantity.stream().mapToDouble(q -> q.standardUncertainty(kind)).findFirst();
  }
}
