package castwell.web.workbench;

import static castwell.web.unit.Dimension.DISTANCE;
import static castwell.web.unit.Dimension.DURATION;
import static castwell.web.unit.Dimension.FINE_LENGTH;

import castwell.analysis.gates.DropCheck;
import castwell.analysis.gates.NormalGravity;
import castwell.analysis.speed.Calibration;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import castwell.capture.store.Calibrations;
import castwell.capture.store.Shot;
import castwell.web.chart.Sheet;
import castwell.web.text.Speech;
import castwell.web.workbench.BowPage.Fact;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** How far apart the gates stand, and whether a falling rod says so too. */
public final class CalibrationPage {
  private static final int LAST = 12;

  /** What the ground adds or takes: see {@link NormalGravity}. */
  private static final double GRAVITY_U = 0.001;

  private final Asked asked;
  private final Speech speech;
  private final String station;
  private final Optional<Calibrations.Entry> now;

  /**
   * @param fields of the gates, to be entered anew
   * @param history what was entered, the last first
   * @param passages that may have been the rod, the last first
   * @param answer what the drop says, empty where none was asked for
   */
  public record View(
      List<String> stations,
      String station,
      List<Fact> gates,
      List<Field> fields,
      Sheet history,
      List<Passage> passages,
      Drop drop,
      List<String> answer,
      List<Fact> figures) {}

  /** A passage to choose from. */
  public record Passage(String id, String told) {}

  /** What was asked of the drop. */
  public record Drop(
      Field height, Field heightU, String latitude, String altitude, String passage) {}

  private CalibrationPage(Asked asked) {
    this.asked = asked;
    this.speech = asked.speech();
    this.station =
        asked.text("station").filter(asked.stations()::contains).orElse(asked.stations().get(0));
    this.now = asked.t().calibrations().inForce(station, asked.now());
  }

  public static Page of(Asked asked) {
    return new Page(
        Room.GATES,
        "calibration",
        asked.say("calibration.title"),
        new CalibrationPage(asked).view());
  }

  private View view() {
    List<Shot> last = asked.t().shots().latest(station, LAST);
    List<Fact> figures = new ArrayList<>();
    List<String> answer = new ArrayList<>();
    try {
      drop(last, figures).ifPresent(answer::add);
    } catch (IllegalArgumentException e) {
      answer.add(asked.say("calibration.refused", e.getMessage()));
    }
    return new View(
        asked.stations(),
        station,
        now.map(entry -> SessionPage.gates(asked, entry.calibration())).orElse(List.of()),
        now.map(entry -> fields(entry.calibration())).orElse(List.of()),
        history(),
        last.stream().flatMap(shot -> passage(shot).stream()).toList(),
        new Drop(
            field("drop", "calibration.drop", asked.quantity("drop", FINE_LENGTH)),
            field("drop_u", "gates.spacing_u", OptionalDouble.of(heightU())),
            asked.text("latitude").orElse(""),
            asked.text("altitude").orElse("0"),
            asked.text("passage").orElse("")),
        answer,
        figures);
  }

  private List<Field> fields(Calibration gates) {
    return List.of(
        field("spacing_mm", "gates.spacing", OptionalDouble.of(gates.spacingM())),
        field("spacing_u_mm", "gates.spacing_u", OptionalDouble.of(gates.spacingUM())),
        field(
            "trigger_scatter_mm",
            "calibration.trigger",
            OptionalDouble.of(gates.triggerScatterM())));
  }

  private Field field(String name, String key, OptionalDouble metres) {
    return Field.of(speech, name, key, FINE_LENGTH, metres);
  }

  private double heightU() {
    return asked.quantity("drop_u", FINE_LENGTH).orElse(0.001);
  }

  private Sheet history() {
    Sheet.Rows rows =
        new Sheet.Rows(
            asked.say("calibration.from"),
            asked.say("calibration.to"),
            asked.say("gates.spacing"),
            asked.say("gates.from_bow"),
            asked.say("calibration.entered"));
    List<Calibrations.Entry> entries = new ArrayList<>(asked.t().calibrations().of(station));
    Collections.reverse(entries);
    entries.forEach(
        entry ->
            rows.add(
                Days.withMinute(entry.validFrom(), asked.zone()),
                entry.validTo().map(to -> Days.withMinute(to, asked.zone())).orElse("–"),
                speech.figure(
                    FINE_LENGTH, entry.calibration().spacingM(), entry.calibration().spacingUM()),
                speech.plain(DISTANCE, entry.calibration().gatesFromBowM()),
                Days.withMinute(entry.entered(), asked.zone()) + ", " + entry.enteredBy()));
    return rows.sheet();
  }

  /** One that has a time from gate to gate by its front. */
  private Optional<Passage> passage(Shot shot) {
    return interval(shot)
        .map(
            seconds ->
                new Passage(
                    shot.shotId(),
                    asked.say(
                        "calibration.passage",
                        Days.withMinute(shot.fired(), asked.zone()),
                        speech.figure(DURATION, seconds.value(), seconds.standardUncertainty()))));
  }

  /** By the front edges; where they see the rod scatters as it does with arrows. */
  private Optional<Quantity> interval(Shot shot) {
    OptionalDouble front = shot.figure().frontMps();
    if (now.isEmpty() || front.isEmpty() || shot.byGates().isEmpty()) {
      return Optional.empty();
    }
    double spacingM =
        asked.t().calibrations().of(station).stream()
            .filter(entry -> entry.id() == shot.figure().calibrationId())
            .mapToDouble(entry -> entry.calibration().spacingM())
            .findFirst()
            .orElse(now.get().calibration().spacingM());
    double seconds = spacingM / front.getAsDouble();
    double u = seconds * shot.figure().frontUMps().orElse(0) / front.getAsDouble();
    return Optional.of(Quantity.of(seconds, u, Source.common("ticks and triggers")));
  }

  private Optional<String> drop(List<Shot> last, List<Fact> figures) {
    OptionalDouble height = asked.quantity("drop", FINE_LENGTH);
    OptionalDouble latitude = asked.number("latitude");
    Optional<Quantity> measured =
        last.stream()
            .filter(shot -> asked.text("passage").filter(shot.shotId()::equals).isPresent())
            .findFirst()
            .flatMap(this::interval);
    if (height.isEmpty() || latitude.isEmpty() || measured.isEmpty() || now.isEmpty()) {
      return Optional.empty();
    }
    double g = NormalGravity.of(latitude.getAsDouble(), asked.number("altitude").orElse(0));
    Quantity gravity = Quantity.of(g, GRAVITY_U, Source.common("gravity"));
    Calibration gates = now.get().calibration();
    Quantity drop = Quantity.of(height.getAsDouble(), heightU(), Source.common("drop"));
    Quantity spacing = Quantity.of(gates.spacingM(), gates.spacingUM(), Source.common("spacing"));
    DropCheck check = new DropCheck(DropCheck.expectedS(drop, spacing, gravity), measured.get());
    Quantity error = check.relativeError();
    figures.add(fact("calibration.expected", check.expectedS()));
    figures.add(fact("calibration.measured", check.measuredS()));
    figures.add(
        new Fact(asked.say("calibration.gravity"), String.format(Locale.ROOT, "%.4f m/s²", g)));
    figures.add(
        new Fact(
            asked.say("calibration.error"),
            String.format(
                Locale.ROOT,
                "%+.2f %% ± %.2f %%",
                100 * error.value(),
                100 * error.standardUncertainty())));
    return Optional.of(asked.say("calibration." + check.outcome().name().toLowerCase(Locale.ROOT)));
  }

  private Fact fact(String key, Quantity seconds) {
    return new Fact(asked.say(key), speech.figure(DURATION, seconds));
  }
}
