package castwell.capture.view.station;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;

import castwell.analysis.unit.Units;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import castwell.capture.view.InUnits;
import castwell.capture.view.StateName;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalDouble;

/** Finds who shoots what at a station at an instant. */
public final class TagsInForce {
  private TagsInForce() {}

  /**
   * @param zone the time zone in which a bow state's date is told
   */
  public static TagsView of(Transaction t, String station, Instant at, ZoneId zone) {
    Tags.Pair tags = t.tags().at(station, at);
    Optional<BowState> bow =
        tags.bowId().isPresent() ? t.rack().state(tags.bowId().getAsLong(), at) : Optional.empty();
    Optional<Arrow> arrow =
        tags.arrowId().isPresent()
            ? t.rack().arrowById(tags.arrowId().getAsLong())
            : Optional.empty();
    return new TagsView(
        station,
        bow.map(BowState::bow),
        bow.map(b -> StateName.of(b.since(), zone)),
        InUnits.of(bow.map(BowState::drawWeightN), NEWTONS_PER_POUND),
        InUnits.of(bow.map(BowState::drawLengthM), METRES_PER_INCH),
        arrow.map(Arrow::name),
        InUnits.of(arrow.map(Arrow::massKg), KILOGRAMS_PER_GRAIN),
        arrow.isPresent() && bow.isPresent()
            ? OptionalDouble.of(Units.grainsPerPound(arrow.get().massKg(), bow.get().drawWeightN()))
            : OptionalDouble.empty());
  }
}
