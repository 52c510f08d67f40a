package castwell.web.metrics;

import castwell.analysis.speed.TickRate;
import castwell.capture.health.BoardRate;
import castwell.capture.health.Health;
import castwell.capture.health.Item;
import castwell.capture.health.Vitals;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.station.LinkState;
import castwell.capture.store.HeardBeat;
import castwell.capture.view.health.Level;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Surroundings;
import io.prometheus.metrics.model.snapshots.Unit;
import java.util.Locale;
import java.util.OptionalInt;

/** The metrics of one station, in base units. */
final class StationMetrics {
  private static final double TOP_LIGHT = 1023;

  private StationMetrics() {}

  static void add(Families families, Vitals vitals) {
    String station = vitals.station();
    vitals
        .link()
        .ifPresent(
            link ->
                families.state(
                    "castwell_link",
                    "How things stand between the station and its board.",
                    LinkState.State.values(),
                    link.state(),
                    StationMetrics::word,
                    "station",
                    station));
    vitals.lastBeat().ifPresent(beat -> beat(families, station, beat));
    vitals
        .rate()
        .ifPresent(
            rate ->
                rate.measured().ifPresent(measured -> clock(families, station, rate, measured)));
    vitals
        .faults()
        .ifPresent(
            faults ->
                faults
                    .sinceStart()
                    .forEach(
                        (kind, count) ->
                            families.counter(
                                "castwell_faults",
                                "What went wrong between board and store since the program's start.",
                                count,
                                "station",
                                station,
                                "kind",
                                word(kind))));
    vitals
        .store()
        .ifPresent(
            store ->
                families.gauge(
                    "castwell_store_waiting",
                    "Passages that are kept in memory alone.",
                    store.waiting(),
                    "station",
                    station));
    vitals.broker().ifPresent(broker -> broker(families, station, broker));
  }

  private static void beat(Families families, String station, HeardBeat heard) {
    Heartbeat beat = heard.beat();
    families.gauge(
        "castwell_last_beat_timestamp_seconds",
        "When the board last beat.",
        Unit.SECONDS,
        heard.at().toEpochMilli() / 1e3,
        "station",
        station);
    families.counter(
        "castwell_board_edges", "Edges since the board's start.", beat.edges(), "station", station);
    families.counter(
        "castwell_board_merged_edges",
        "Edges that fell together and got one stamp, since the board's start.",
        beat.merged(),
        "station",
        station);
    families.counter(
        "castwell_board_dropped_edges",
        "Edges that the board dropped since its start.",
        beat.dropped(),
        "station",
        station);
    Surroundings around = beat.surroundings();
    light(families, station, "A", around.lightA());
    light(families, station, "B", around.lightB());
    measured(
        families,
        "castwell_supply_volts",
        "The board's supply.",
        Unit.VOLTS,
        around.supplyMv(),
        1_000,
        station);
    measured(
        families,
        "castwell_chip_celsius",
        "Temperature of the board's chip.",
        Unit.CELSIUS,
        around.chipCentiC(),
        100,
        station);
    measured(
        families,
        "castwell_air_celsius",
        "Temperature of the air.",
        Unit.CELSIUS,
        around.airCentiC(),
        100,
        station);
    measured(
        families,
        "castwell_air_humidity_ratio",
        "Relative humidity of the air.",
        Unit.RATIO,
        around.humidityCentiPercent(),
        10_000,
        station);
  }

  private static void light(Families families, String station, String gate, OptionalInt light) {
    light.ifPresent(
        steps ->
            families.gauge(
                "castwell_light_ratio",
                "Light at a gate's sensor, of all that it can tell.",
                Unit.RATIO,
                steps / TOP_LIGHT,
                "station",
                station,
                "gate",
                gate));
  }

  private static void measured(
      Families families,
      String name,
      String help,
      Unit unit,
      OptionalInt value,
      double parts,
      String station) {
    value.ifPresent(v -> families.gauge(name, help, unit, v / parts, "station", station));
  }

  private static void clock(Families families, String station, BoardRate rate, TickRate measured) {
    families.gauge(
        "castwell_board_clock_error_ratio",
        "How much faster than nominal the board's clock runs.",
        Unit.RATIO,
        BoardRate.error(measured, rate.nominalHz()),
        "station",
        station);
    families.gauge(
        "castwell_board_clock_error_uncertainty_ratio",
        "Standard uncertainty of the board clock's error.",
        Unit.RATIO,
        measured.relativeU(),
        "station",
        station);
  }

  private static void broker(Families families, String station, BrokerState broker) {
    families.gauge(
        "castwell_broker_connected",
        "1 while the broker is told what happens.",
        broker.connected() ? 1 : 0,
        "station",
        station);
    families.gauge(
        "castwell_outbox_messages",
        "Messages that wait on the disk for the broker.",
        broker.waiting(),
        "station",
        station);
  }

  /**
   * @param station empty for the items that all stations share
   */
  static void judged(Families families, String station, Health health) {
    for (Item item : health.items()) {
      families.state(
          "castwell_health",
          "Whether it is well.",
          Level.values(),
          item.level(),
          StationMetrics::word,
          "station",
          station,
          "item",
          item.name());
    }
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
