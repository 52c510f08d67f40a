package castwell.web.workbench;

import static castwell.web.unit.Dimension.DURATION;
import static castwell.web.unit.Dimension.FINE_LENGTH;

import castwell.analysis.gates.DropCheck;
import castwell.analysis.gates.NormalGravity;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Stamps;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import castwell.capture.derive.Derivation;
import castwell.capture.store.Shot;
import castwell.web.text.Speech;
import castwell.web.workbench.BowPage.Fact;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Checks whether a rod that fell through the gates took as long as it should. */
public final class DropTrial {
  private static final int LAST = 12;

  /**
   * The relative uncertainty of gravity from what lies in the ground: see {@link NormalGravity}.
   */
  private static final double GRAVITY_U = 0.001;

  private static final double DROP_U_M = 0.001;

  private final PageRequest request;
  private final Speech speech;
  private final Optional<Calibration> gates;
  private final Map<Shot, Quantity> falls = new LinkedHashMap<>();
  private final List<Fact> figures = new ArrayList<>();

  /**
   * @param passages those that may have been the rod, the last first
   * @param answer what the drop says, empty where nobody chose one
   */
  public record View(
      List<Passage> passages, Wanted wanted, Optional<String> answer, List<Fact> figures) {}

  /** A passage to choose from. */
  public record Passage(String id, String told) {}

  /** What was filled in. */
  public record Wanted(
      NumberInput height, NumberInput heightU, String latitude, String altitude, String passage) {}

  DropTrial(PageRequest request, String station, Optional<Calibration> gates) {
    this.request = request;
    this.speech = request.speech();
    this.gates = gates;
    request
        .t()
        .shots()
        .latest(station, LAST)
        .forEach(shot -> seconds(shot).ifPresent(fall -> falls.put(shot, fall)));
  }

  View view() {
    Optional<String> answer;
    try {
      answer = answer();
    } catch (IllegalArgumentException e) {
      answer = Optional.of(request.say("calibration.refused", e.getMessage()));
    }
    return new View(
        falls.entrySet().stream().map(fall -> passage(fall.getKey(), fall.getValue())).toList(),
        wanted(),
        answer,
        figures);
  }

  private Wanted wanted() {
    return new Wanted(
        field("drop", "calibration.drop", request.quantity("drop", FINE_LENGTH)),
        field("drop_u", "gates.spacing_u", OptionalDouble.of(dropU())),
        request.text("latitude").orElse(""),
        request.text("altitude").orElse("0"),
        request.text("passage").orElse(""));
  }

  private NumberInput field(String name, String key, OptionalDouble metres) {
    return NumberInput.of(speech, name, key, FINE_LENGTH, metres);
  }

  private double dropU() {
    return request.quantity("drop_u", FINE_LENGTH).orElse(DROP_U_M);
  }

  private Passage passage(Shot shot, Quantity seconds) {
    return new Passage(
        shot.shotId(),
        request.say(
            "calibration.passage",
            Days.withMinute(shot.fired(), request.zone()),
            speech.figure(DURATION, seconds)));
  }

  private Optional<Quantity> seconds(Shot shot) {
    return Derivation.stamps(request.t(), shot).flatMap(Stamps::betweenFronts);
  }

  private Optional<String> answer() {
    OptionalDouble height = request.quantity("drop", FINE_LENGTH);
    OptionalDouble latitude = request.number("latitude");
    Optional<Quantity> measured =
        falls.entrySet().stream()
            .filter(fall -> request.text("passage").equals(Optional.of(fall.getKey().shotId())))
            .map(Map.Entry::getValue)
            .findFirst();
    if (height.isEmpty() || latitude.isEmpty() || measured.isEmpty() || gates.isEmpty()) {
      return Optional.empty();
    }
    double g = NormalGravity.of(latitude.getAsDouble(), request.number("altitude").orElse(0));
    Quantity expected =
        DropCheck.expectedS(
            Quantity.of(height.getAsDouble(), dropU(), Source.common("drop")),
            gates.get().spacing(),
            Quantity.of(g, GRAVITY_U, Source.common("gravity")),
            gates.get().triggerScatterM());
    return Optional.of(told(new DropCheck(expected, measured.get()), g));
  }

  private String told(DropCheck check, double g) {
    Quantity error = check.relativeError();
    figures.add(fact("calibration.expected", check.expectedS()));
    figures.add(fact("calibration.measured", check.measuredS()));
    figures.add(
        new Fact(request.say("calibration.gravity"), String.format(Locale.ROOT, "%.4f m/s²", g)));
    figures.add(
        new Fact(
            request.say("calibration.error"),
            String.format(
                Locale.ROOT,
                "%+.2f %% ± %.2f %%",
                100 * error.value(),
                100 * error.standardUncertainty())));
    return request.say("calibration." + check.outcome().name().toLowerCase(Locale.ROOT));
  }

  private Fact fact(String key, Quantity seconds) {
    return new Fact(request.say(key), speech.figure(DURATION, seconds));
  }
}
