package castwell.web.report;

import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.analysis.bow.VirtualMass;
import castwell.analysis.cell.Cell;
import castwell.analysis.compare.Conditions;
import castwell.analysis.compare.Conditions.Difference;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import castwell.capture.store.Weather.Air;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What else differed between two days of a bow. */
final class ConditionRows {
  private ConditionRows() {}

  static List<Map<String, Object>> of(Shelf shelf, Reworked reworked) {
    Day before = reworked.bow().before();
    Day after = reworked.bow().after();
    BowState stateBefore = reworked.bow().stateBefore();
    BowState stateAfter = reworked.bow().stateAfter();
    Optional<VirtualMass> model = before.bowCells().virtualMass();
    List<Map<String, Object>> rows = new ArrayList<>();
    double drawn = stateAfter.drawWeightN() - stateBefore.drawWeightN();
    if (drawn != 0) {
      rows.add(
          row(
              "draw weight",
              "The draw weight changed by %s lb: that is part of the rework, not of the day."
                  .formatted(Trade.plain(drawn / NEWTONS_PER_POUND, 1)),
              OptionalDouble.empty()));
    }
    double massKg = before.cells().stream().mapToDouble(Cell::massKg).average().orElseThrow();
    if (model.isPresent()) {
      conditions(shelf, after, stateAfter)
          .since(conditions(shelf, before, stateBefore), massKg, model.get())
          .forEach(difference -> rows.add(row(difference)));
    }
    return rows;
  }

  private static Conditions conditions(Shelf shelf, Day day, BowState state) {
    String session = day.sessions().iterator().next();
    Air air = shelf.transaction().weather().ofSession(session);
    OptionalDouble gates =
        shelf.transaction().shots().ofSession(session).stream()
            .flatMap(shot -> shot.byGates().stream())
            .mapToDouble(Shot.ByGates::middleFromBowM)
            .average();
    return new Conditions(
        gates, air.celsius(), air.relativeHumidity(), state.measures().stringMassKg());
  }

  private static Map<String, Object> row(Difference difference) {
    return row(difference.what(), difference.sentence(), difference.relativeSpeed());
  }

  private static Map<String, Object> row(String what, String sentence, OptionalDouble relative) {
    return new Fields()
        .put("what", what)
        .put("sentence", sentence)
        .put(
            "effect_percent", relative.isPresent() ? (Double) (100 * relative.getAsDouble()) : null)
        .map();
  }
}
