package castwell.capture.view.station;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.analysis.unit.Units;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import castwell.capture.view.shot.ShotColumns;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Who shoots what at a station at an instant, in trade units; null is "not known". */
public final class TagsInForce {
  private TagsInForce() {}

  /**
   * @param zone in which a bow state's date is told
   */
  public static Map<String, Object> row(Transaction t, String station, Instant at, ZoneId zone) {
    Tags.Pair tags = t.tags().at(station, at);
    Optional<BowState> bow =
        tags.bowId().isPresent() ? t.rack().state(tags.bowId().getAsLong(), at) : Optional.empty();
    Optional<Arrow> arrow =
        tags.arrowId().isPresent()
            ? t.rack().arrowById(tags.arrowId().getAsLong())
            : Optional.empty();
    Map<String, Object> row = new LinkedHashMap<>();
    row.put("station", station);
    row.put("bow", bow.map(BowState::bow).orElse(null));
    row.put("bow_state", bow.map(b -> ShotColumns.stateName(b.since(), zone)).orElse(null));
    row.put("draw_weight_lb", bow.map(b -> b.drawWeightN() / NEWTONS_PER_POUND).orElse(null));
    row.put("draw_length_in", bow.map(b -> b.drawLengthM() / METRES_PER_INCH).orElse(null));
    row.put("arrow", arrow.map(Arrow::name).orElse(null));
    row.put("arrow_mass_gr", arrow.map(a -> a.massKg() / KILOGRAMS_PER_GRAIN).orElse(null));
    row.put(
        "grains_per_pound",
        arrow
            .flatMap(a -> bow.map(b -> Units.grainsPerPound(a.massKg(), b.drawWeightN())))
            .orElse(null));
    return row;
  }
}
