package castwell.web.workbench;

import static castwell.web.unit.Dimension.DISTANCE;
import static castwell.web.unit.Dimension.FINE_LENGTH;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.speed.Budget;
import castwell.analysis.speed.Calibration;
import castwell.capture.store.Calibrations;
import castwell.capture.view.station.StationBudget;
import castwell.capture.word.Rounded;
import castwell.web.chart.FigureTable;
import castwell.web.text.Speech;
import castwell.web.workbench.BowPage.Fact;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The page of the gates: how far apart they stand, and whether a falling rod confirms it. */
public final class CalibrationPage {
  private final PageRequest request;
  private final Speech speech;
  private final String station;
  private final Optional<Calibrations.Entry> now;

  /**
   * @param fields the gates' dimensions, to be entered anew
   * @param offer the spacing that arrows of known length tell
   * @param taken whether that is filled in to be entered
   * @param history what was entered, the last first
   * @param budget what makes a speed uncertain at these gates, the largest first
   * @param drop the check by a falling rod
   */
  public record View(
      List<String> stations,
      String station,
      List<Fact> gates,
      Optional<SpacingOffer> offer,
      boolean taken,
      List<NumberInput> fields,
      FigureTable history,
      FigureTable budget,
      DropTrial.View drop) {}

  private CalibrationPage(PageRequest request) {
    this.request = request;
    this.speech = request.speech();
    this.station =
        request
            .text("station")
            .filter(request.stations()::contains)
            .orElse(request.stations().get(0));
    this.now = request.t().calibrations().inForce(station, request.now());
  }

  public static Page of(PageRequest request) {
    return new Page(
        MenuEntry.GATES,
        "calibration",
        request.say("calibration.title"),
        new CalibrationPage(request).view());
  }

  private View view() {
    return new View(
        request.stations(),
        station,
        now.map(entry -> SessionPage.gates(request, entry.calibration())).orElse(List.of()),
        SpacingOffer.of(request, station),
        spacing().isPresent(),
        now.map(entry -> fields(entry.calibration())).orElse(List.of()),
        history(),
        budget(),
        new DropTrial(request, station, now.map(Calibrations.Entry::calibration)).view());
  }

  /** The spacing that is taken over, to be filled in. */
  private OptionalDouble spacing() {
    return request.quantity("spacing", FINE_LENGTH);
  }

  private List<NumberInput> fields(Calibration gates) {
    double spacing = spacing().orElse(gates.spacingM());
    double spacingU = request.quantity("spacing_u", FINE_LENGTH).orElse(gates.spacingUM());
    return List.of(
        field("spacing_mm", "gates.spacing", OptionalDouble.of(spacing)),
        field("spacing_u_mm", "gates.spacing_u", OptionalDouble.of(spacingU)),
        field(
            "trigger_scatter_mm",
            "calibration.trigger",
            OptionalDouble.of(gates.triggerScatterM())));
  }

  private FigureTable budget() {
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("budget.source"),
            request.say("budget.kind"),
            request.say("budget.share"),
            request.say("budget.at", speech.plain(SPEED, Budget.TYPICAL_MPS)),
            request.say("budget.setting"));
    StationBudget.of(request.t(), station, request.now()).stream()
        .flatMap(budget -> budget.rows().stream())
        .forEach(
            row ->
                rows.add(
                    request.say("budget." + row.source()),
                    row.kind().map(kind -> request.say("budget." + kind)).orElse("–"),
                    Rounded.to(4, row.standardUPercent()) + " %",
                    "%s %s"
                        .formatted(
                            Rounded.to(4, speech.in(SPEED, row.standardUMps())),
                            speech.unit(SPEED)),
                    row.setting().orElse("–")));
    return rows.table();
  }

  private NumberInput field(String name, String key, OptionalDouble metres) {
    return NumberInput.of(speech, name, key, FINE_LENGTH, metres);
  }

  private FigureTable history() {
    FigureTable.Rows rows =
        new FigureTable.Rows(
            request.say("calibration.from"),
            request.say("calibration.to"),
            request.say("gates.spacing"),
            request.say("gates.from_bow"),
            request.say("calibration.entered"));
    List<Calibrations.Entry> entries = new ArrayList<>(request.t().calibrations().of(station));
    Collections.reverse(entries);
    entries.forEach(
        entry ->
            rows.add(
                Days.withMinute(entry.validFrom(), request.zone()),
                entry.validTo().map(to -> Days.withMinute(to, request.zone())).orElse("–"),
                speech.figure(
                        FINE_LENGTH,
                        entry.calibration().spacingM(),
                        entry.calibration().spacingUM())
                    + (entry.calibration().isMeasured()
                        ? ""
                        : " " + request.say("gates.unmeasured")),
                speech.plain(DISTANCE, entry.calibration().gatesFromBowM()),
                Days.withMinute(entry.entered(), request.zone()) + ", " + entry.enteredBy()));
    return rows.table();
  }
}
