package castwell.capture.health;

import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Oscillator;
import castwell.capture.clock.BoardClock;
import castwell.capture.gates.SessionGates;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.station.LinkState;
import castwell.capture.store.Calibrations;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.RawFacts.StoredBeat;
import castwell.capture.store.StationBeats.Run;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Collects what witnesses and the store know, and judges it item by item. */
public final class Checkup {
  private static final Duration EARLIER_APART = Duration.ofMinutes(10);
  private static final int MOST_EARLIER = 300;

  /** What came within this time is judged as the present state. */
  private static final Duration NOW = Duration.ofHours(1);

  /**
   * How far apart the beats are from which the tick rate is measured: ten times as many wouldn't
   * tell it better, since this computer's own clock is the limit.
   */
  private static final Duration STAMPS_APART = Duration.ofSeconds(10);

  private static final int MOST_STAMPS = 360;

  private final Store store;
  private final CaptureSettings settings;
  private final List<String> stations;
  private final Witness witness;
  private final Clock clock;

  public Checkup(
      Store store, CaptureSettings settings, List<String> stations, Witness witness, Clock clock) {
    this.store = store;
    this.settings = settings;
    this.stations = stations;
    this.witness = witness;
    this.clock = clock;
  }

  public List<String> stations() {
    return stations;
  }

  public Instant now() {
    return clock.instant();
  }

  public Vitals vitals(String station) {
    Instant now = clock.instant();
    Optional<LinkState> link = witness.link(station);
    Optional<BrokerState> broker = witness.broker(station);
    return store.read(
        t ->
            new Vitals(
                station,
                now,
                link,
                Vitals.isSilent(link) ? List.of() : witness.beats(station),
                witness.faults(station),
                witness.store(station),
                broker,
                t.beats().runs(station).stream().findFirst().map(run -> rate(t, station, run, now)),
                earlier(t, station, now),
                SessionGates.running(t, station, now),
                t.calibrations()
                    .inForce(station, now)
                    .map(entry -> entry.calibration().isMeasured())
                    .orElse(true)));
  }

  public Health of(String station) {
    return judge(vitals(station));
  }

  public static Health judge(Vitals vitals) {
    List<Item> items = new ArrayList<>();
    items.add(PortItem.of(vitals));
    items.add(BeatItem.of(vitals));
    for (Gate gate : Gate.values()) {
      items.add(LightItem.of(vitals, gate));
    }
    items.add(SupplyItem.of(vitals));
    items.add(ClockItem.of(vitals));
    items.add(EdgesItem.of(vitals));
    vitals.gates().flatMap(GatesItem::of).ifPresent(items::add);
    SpacingItem.of(vitals).ifPresent(items::add);
    items.addAll(FaultItems.of(vitals));
    items.add(StoreItem.of(vitals));
    vitals.broker().map(broker -> BrokerItem.of(broker, vitals.at())).ifPresent(items::add);
    return new Health(List.copyOf(items));
  }

  /** The health of what all stations of this computer share. */
  public Health ofComputer() {
    Instant now = clock.instant();
    return new Health(
        List.of(
            DiskItem.of(store.room(), stations.size()),
            store.read(t -> BackupItem.of(t.upkeep(), now)),
            HostClockItem.of(witness.clockTrouble(), witness.clockStep(), now)));
  }

  public Store store() {
    return store;
  }

  /** The board's tick rate over the last hour in which it was heard. */
  private BoardRate rate(Transaction t, String station, Run run, Instant now) {
    BoardClock boardClock = new BoardClock();
    List<StoredBeat> stamps = new ArrayList<>(t.beats().stamps(run, STAMPS_APART, MOST_STAMPS));
    Collections.reverse(stamps);
    for (StoredBeat beat : stamps) {
      boardClock.add(beat);
    }
    Oscillator oscillator =
        t.calibrations()
            .inForce(station, now)
            .map(Calibrations.Entry::calibration)
            .orElse(settings.gates())
            .oscillator();
    return new BoardRate(
        run.device(),
        run.hz(),
        oscillator,
        boardClock.measured().alone(settings.hostClockRelativeU()),
        stamps.size());
  }

  private static List<HeardBeat> earlier(Transaction t, String station, Instant now) {
    Instant until = now.minus(NOW);
    return t.beats().sampled(station, EARLIER_APART, MOST_EARLIER).stream()
        .filter(beat -> beat.at().isBefore(until))
        .toList();
  }
}
