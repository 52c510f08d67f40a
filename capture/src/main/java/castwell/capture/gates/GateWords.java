package castwell.capture.gates;

import castwell.analysis.gates.FrontOverTail;
import castwell.analysis.gates.GateFindings;
import castwell.analysis.gates.SpacingFromLengths;
import castwell.analysis.gates.Trend;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Phrase;
import castwell.capture.word.Rounded;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Says what is the matter with the gates, a sentence each; nothing where nothing is. */
public final class GateWords {
  private static final double MILLIMETRE = 1e-3;

  /** Finer uncertainties than this are told with another digit. */
  private static final double FINE_MM = 0.1;

  private GateWords() {}

  public static List<Phrase> of(GateFindings found) {
    return Stream.of(frontOverTail(found), trend(found), spacing(found))
        .flatMap(Optional::stream)
        .toList();
  }

  /** Both causes that front over tail can have, which no statistic can part. */
  public static Optional<Phrase> frontOverTail(GateFindings found) {
    if (!found.frontOverTailNamed()) {
      return Optional.empty();
    }
    FrontOverTail both = found.frontOverTail();
    return Optional.of(
        Phrase.of(
            both.meanM() < 0 ? "gates_told.late" : "gates_told.early",
            both.n(),
            millimetres(Math.abs(both.meanM()), both.uM()),
            percent(both.relativeEffect(found.spacingM()))));
  }

  private static Optional<Phrase> trend(GateFindings found) {
    return found.trend().filter(trend -> found.trendNamed()).map(GateWords::trend);
  }

  private static Phrase trend(Trend trend) {
    Quantity change = trend.changeM();
    return Phrase.of(
        "gates_told.trend",
        millimetres(Math.abs(change.value()), change.standardUncertainty()),
        trend.n());
  }

  private static Optional<Phrase> spacing(GateFindings found) {
    return found.spacing().filter(SpacingFromLengths::disagrees).map(GateWords::spacing);
  }

  private static Phrase spacing(SpacingFromLengths told) {
    return Phrase.of(
        "gates_told.spacing",
        told.shots(),
        told.arrows(),
        millimetres(told.spacingM().value(), told.spacingM().standardUncertainty()),
        millimetres(told.statedM().value(), told.statedM().standardUncertainty()));
  }

  private static String millimetres(double metres, double uM) {
    double u = uM / MILLIMETRE;
    int decimals = u < FINE_MM ? 2 : 1;
    return "%s ± %s mm"
        .formatted(Rounded.to(decimals, metres / MILLIMETRE), Rounded.to(decimals, u));
  }

  private static String percent(double share) {
    return Rounded.to(1, 100 * Math.abs(share));
  }
}
