package castwell.web.workbench;

import static castwell.web.unit.Dimension.FINE_LENGTH;

import castwell.analysis.gates.FrontOverTail;
import castwell.analysis.gates.GateFindings;
import castwell.analysis.gates.SpacingFromLengths;
import castwell.analysis.uncertainty.Quantity;
import castwell.web.chart.FigureTable;
import castwell.web.text.Speech;

/** The figures that a session's arrows tell of the gates, as a table. */
final class GatesTold {
  private final Speech speech;
  private final FigureTable.Rows rows;

  private GatesTold(Speech speech) {
    this.speech = speech;
    this.rows =
        new FigureTable.Rows(
            speech.say("gates_told.what"), speech.say("gates_told.value"), speech.say("shots"));
  }

  static FigureTable table(Speech speech, GateFindings found) {
    return new GatesTold(speech).table(found);
  }

  private FigureTable table(GateFindings found) {
    FrontOverTail both = found.frontOverTail();
    add("gates_told.tails", -both.meanM(), both.uM(), both.n());
    both.triggerM()
        .ifPresent(trigger -> add("gates_told.trigger", trigger, both.triggerUM(), both.n()));
    found
        .trend()
        .ifPresent(
            trend -> add(speech.say("gates_told.change"), trend.changeM().times(-1), trend.n()));
    found
        .overKnown()
        .forEach(
            seen -> add(speech.say("gates_told.length", seen.gate()), seen.excessM(), seen.n()));
    found.spacing().ifPresent(this::spacing);
    return rows.table();
  }

  private void spacing(SpacingFromLengths told) {
    if (told.tellsWidth()) {
      add(speech.say("gates_told.width"), told.widthM(), told.shots());
    }
    add(speech.say("gates_told.spacing_told"), told.spacingM(), told.shots());
    rows.add(
        speech.say("gates_told.spacing_entered"), speech.figure(FINE_LENGTH, told.statedM()), "–");
  }

  private void add(String key, double metres, double uM, int n) {
    rows.add(speech.say(key), speech.figure(FINE_LENGTH, metres, uM), String.valueOf(n));
  }

  private void add(String name, Quantity metres, int n) {
    rows.add(name, speech.figure(FINE_LENGTH, metres), String.valueOf(n));
  }
}
