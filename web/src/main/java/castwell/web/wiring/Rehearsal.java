package castwell.web.wiring;

import castwell.analysis.speed.Calibration;
import castwell.capture.command.Commands;
import castwell.capture.device.Port;
import castwell.capture.device.PortSpec;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.rehearsal.RehearsalArrow;
import castwell.capture.rehearsal.RehearsalBow;
import castwell.capture.rehearsal.RehearsalPort;
import castwell.capture.rehearsal.RehearsalRack;
import castwell.capture.rehearsal.RehearsalSettings;
import castwell.capture.rehearsal.RehearsalTags;
import castwell.capture.store.Rack;
import castwell.capture.store.Store;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import castwell.web.settings.Settings;
import castwell.web.settings.Settings.Station;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.LongSupplier;
import java.util.stream.Stream;

/** A pretended range for the daemon: its rack, its gates and its tags. */
public final class Rehearsal {
  private static final String STATION = "rehearsal";

  private Rehearsal() {}

  public static Station station(Settings settings) {
    Calibration gates =
        new Calibration(
            RehearsalSettings.GATE_SPACING_M,
            RehearsalSettings.GATE_SPACING_UNCERTAINTY_M,
            settings.capture().gates().triggerScatterM(),
            RehearsalSettings.GATES_FROM_BOW_M,
            settings.capture().gates().oscillator(),
            true,
            settings.capture().gates().errors());
    return new Station(STATION, new PortSpec.ByPath(STATION), gates);
  }

  /** Puts the invented bows and arrows on the rack at the first start, and tags one of each. */
  public static void fillRack(Store store, Commands commands) {
    if (!store.read(t -> t.rack().bowNames()).isEmpty()) {
      return;
    }
    Instant now = Instant.now();
    for (RehearsalBow bow : RehearsalRack.bows()) {
      commands.bows().add(bow.name(), now, bow.drawWeightN(), bow.drawLengthM(), bow.lastDone());
    }
    for (RehearsalArrow arrow : RehearsalRack.arrows()) {
      commands
          .arrows()
          .add(
              arrow.name(),
              arrow.massKg(),
              Measures.<ArrowMeasure>none()
                  .with(ArrowMeasure.LENGTH, arrow.lengthM())
                  .with(ArrowMeasure.DIAMETER, arrow.diameterM()));
    }
    commands.tag(
        STATION,
        Optional.of(RehearsalRack.bows().get(0).name()),
        Optional.of(RehearsalRack.arrows().get(0).name()),
        "rehearsal");
  }

  public static Port port(
      Store store, Station station, long seed, double secondsBetweenArrows, LongSupplier micros) {
    RehearsalSettings usual = RehearsalSettings.of(seed, 0);
    return port(
        store,
        station,
        new RehearsalSettings(
            seed,
            usual.device(),
            usual.boot(),
            secondsBetweenArrows,
            usual.secondsToFetch(),
            usual.speedSpread(),
            usual.mishapShare()),
        micros);
  }

  /**
   * The port of a pretended board, which has started once more than the last time this folder saw
   * it.
   */
  public static Port port(
      Store store, Station station, RehearsalSettings wanted, LongSupplier micros) {
    int boot = store.read(t -> t.raw().highestBoot(wanted.device())) + 1;
    RehearsalSettings settings =
        new RehearsalSettings(
            wanted.seed(),
            wanted.device(),
            boot & 0xFFFF,
            wanted.secondsBetweenArrows(),
            wanted.secondsToFetch(),
            wanted.speedSpread(),
            wanted.mishapShare());
    return new RehearsalPort(settings, micros, () -> store.read(t -> tagged(t, station.name())));
  }

  private static Optional<RehearsalTags> tagged(Transaction t, String station) {
    Tags.Pair tags = t.tags().at(station, Instant.now());
    Optional<String> bow = name(t.rack().bowNames().stream(), tags.bowId());
    Optional<String> arrow =
        name(t.rack().arrows().stream().map(a -> new Rack.Named(a.id(), a.name())), tags.arrowId());
    return bow.flatMap(b -> arrow.map(a -> new RehearsalTags(b, a)));
  }

  private static Optional<String> name(Stream<Rack.Named> all, OptionalLong id) {
    return all.filter(named -> id.isPresent() && named.id() == id.getAsLong())
        .map(Rack.Named::name)
        .findFirst();
  }
}
