package castwell.web.settings;

import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.capture.assembly.AssemblyTiming;
import castwell.capture.device.PortSpec;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.Secret;
import castwell.capture.settings.AirSettings;
import castwell.capture.settings.CaptureSettings;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The settings, as the settings file gives them.
 *
 * @param listen where the page is served
 * @param http who may come to it
 * @param capture settings that hold for every station
 * @param stations at least one
 * @param broker the broker to publish to, if one is named
 */
public record Settings(
    HttpAddress listen,
    HttpSettings http,
    CaptureSettings capture,
    List<Station> stations,
    Optional<BrokerSettings> broker) {

  /** A pair of gates and its board. */
  public record Station(String name, PortSpec port, Calibration gates) {}

  /**
   * Reads a parsed file.
   *
   * @param path where the file is; paths in it are relative to its folder
   * @param environment the process's; what it says of the broker takes precedence over the file
   * @param path where it is: paths in it are beside it
   * @param environment what it says of the broker goes before what the file says
   */
  static Settings of(SettingsTable file, Path path, Map<String, String> environment) {
    SettingsTable httpTable = file.table("http");
    SettingsTable passage = file.table("passage");
    SettingsTable air = file.table("air");
    HttpSettings http = HttpSettings.of(httpTable, path);
    HttpAddress listen =
        httpTable.value("listen", HttpAddress.LOOPBACK.toString(), HttpAddress::parse);
    SettingsTable gatesTable = file.table("gates");
    GatesSettings gates = GatesSettings.of(gatesTable, GatesSettings.DEFAULT);
    CaptureSettings capture =
        new CaptureSettings(
            timing(passage),
            limits(passage),
            gates.calibration(),
            new AirSettings(
                air.number("altitude_m", 0, -430, 9000),
                air.number("celsius", 15, -40, 60),
                air.number("humidity_percent", 50, 0, 100) / 100),
            file.table("clock").number("host_ppm", 50, 0, 1000) * 1e-6 / Math.sqrt(3),
            ZoneId.systemDefault());
    List<Station> stations = stations(file, gates);
    Optional<BrokerSettings> broker = broker(file.table("mqtt"), environment);
    file.refuseUnknown();
    return new Settings(listen, http, capture, stations, broker);
  }

  public Settings with(HttpSettings other) {
    return new Settings(listen, other, capture, stations, broker);
  }

  private static Optional<BrokerSettings> broker(
      SettingsTable mqtt, Map<String, String> environment) {
    Map<String, Optional<String>> said = new HashMap<>();
    for (String key : List.of("url", "user", "password", "authority", "certificate", "key")) {
      String written = mqtt.value(key, "", text -> text);
      String set = environment.getOrDefault("CASTWELL_MQTT_" + key.toUpperCase(Locale.ROOT), "");
      said.put(key, Stream.of(set, written).filter(text -> !text.isEmpty()).findFirst());
    }
    return said.get("url")
        .map(
            url ->
                new BrokerSettings(
                    url,
                    said.get("user"),
                    said.get("password").map(Secret::new),
                    said.get("authority"),
                    said.get("certificate"),
                    said.get("key")));
  }

  private static AssemblyTiming timing(SettingsTable passage) {
    AssemblyTiming defaults = AssemblyTiming.defaults();
    return new AssemblyTiming(
        Duration.ofNanos(
            Math.round(passage.number("quiet_ms", defaults.quiet().toMillis(), 2, 100) * 1e6)),
        defaults.holeWait());
  }

  private static Limits limits(SettingsTable passage) {
    Limits d = Limits.defaults();
    double slowest = passage.number("slowest_mps", d.slowestMps(), 1, 200);
    double fastest = passage.number("fastest_mps", d.fastestMps(), 1, 400);
    double shortest = passage.number("shortest_mm", d.shortestM() * 1e3, 1, 5000);
    double longest = passage.number("longest_mm", d.longestM() * 1e3, 1, 5000);
    if (slowest >= fastest) {
      throw passage.bad("slowest_mps", "it must be below fastest_mps, which is " + fastest);
    }
    if (shortest >= longest) {
      throw passage.bad("shortest_mm", "it must be below longest_mm, which is " + longest);
    }
    return new Limits(
        slowest,
        fastest,
        shortest / 1e3,
        longest / 1e3,
        passage.number("length_tolerance_mm", d.lengthToleranceM() * 1e3, 0, 1000) / 1e3,
        d.flutterM(),
        d.flutterEdges(),
        d.agreementSigmas());
  }

  public static Oscillator oscillator(String word) {
    return switch (word) {
      case "crystal" -> Oscillator.CRYSTAL;
      case "resonator" -> Oscillator.RESONATOR;
      default ->
          throw new IllegalArgumentException(
              "an oscillator is \"crystal\" or \"resonator\", not \"" + word + "\"");
    };
  }

  private static List<Station> stations(SettingsTable file, GatesSettings gates) {
    List<Station> stations = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (SettingsTable table : file.tables("station")) {
      String name = table.value("name", "range", Settings::stationName);
      if (!names.add(name)) {
        throw table.bad("name", "two stations are named \"" + name + "\"; rename one");
      }
      stations.add(
          new Station(
              name,
              table.value("port", "auto", PortSpec::parse),
              GatesSettings.of(table, gates).calibration()));
    }
    return stations.isEmpty()
        ? List.of(new Station("range", PortSpec.parse("auto"), gates.calibration()))
        : List.copyOf(stations);
  }

  /** Checks a station's name, which becomes part of addresses and topics. */
  public static String stationName(String name) {
    if (!name.matches("[A-Za-z0-9._-]{1,32}")) {
      throw new IllegalArgumentException(
          "a station's name is 1 to 32 of A-Z a-z 0-9 . _ -, not \"" + name + "\"");
    }
    return name;
  }
}
