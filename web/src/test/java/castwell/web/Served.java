package castwell.web;

import castwell.capture.command.Commands;
import castwell.capture.device.Port;
import castwell.capture.device.PortSpec;
import castwell.capture.device.SerialPorts;
import castwell.capture.rehearsal.RehearsalSettings;
import castwell.capture.store.Store;
import castwell.web.http.guard.Refusals;
import castwell.web.settings.HttpAddress;
import castwell.web.settings.Settings;
import castwell.web.settings.Settings.Station;
import castwell.web.settings.SettingsFile;
import castwell.web.wiring.Daemon;
import castwell.web.wiring.Daemon.Running;
import castwell.web.wiring.Rehearsal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The real daemon over a data folder, in this process, at a port of its own. */
final class Served implements AutoCloseable {
  private final Daemon daemon;
  private final Commands commands;
  private final Running running;

  private Served(Daemon daemon, Commands commands, Running running) {
    this.daemon = daemon;
    this.commands = commands;
    this.running = running;
  }

  /**
   * A pretended range.
   *
   * @param httpPort 0 for any that is free
   */
  static Served rehearsal(Path folder, RehearsalSettings rehearsal, int httpPort) {
    Daemon daemon = Daemon.open(folder);
    Settings settings = SettingsFile.read(folder);
    Station station = Rehearsal.station(settings);
    Rehearsal.fillRack(daemon.store(), daemon.commands(settings.capture()));
    Port port = Rehearsal.port(daemon.store(), station, rehearsal, () -> System.nanoTime() / 1_000);
    return start(
        daemon, settings, List.of(station), Map.of(station.name(), port), local(httpPort), true);
  }

  /**
   * Several pretended ranges side by side.
   *
   * @param rehearsals by station; empty for one whose board isn't there
   */
  static Served lanes(Path folder, Map<String, Optional<RehearsalSettings>> rehearsals) {
    Daemon daemon = Daemon.open(folder);
    Settings settings = SettingsFile.read(folder);
    Rehearsal.fillRack(daemon.store(), daemon.commands(settings.capture()));
    List<Station> stations = new ArrayList<>();
    Map<String, Port> ports = new LinkedHashMap<>();
    SerialPorts serial = new SerialPorts(() -> System.nanoTime() / 1_000);
    rehearsals.forEach(
        (name, rehearsal) -> {
          PortSpec.Serial absent = new PortSpec.ByPath(folder.resolve(name).toString());
          Station station = new Station(name, absent, settings.capture().gates());
          stations.add(station);
          ports.put(
              name,
              rehearsal
                  .map(
                      r ->
                          Rehearsal.port(
                              daemon.store(), station, r, () -> System.nanoTime() / 1_000))
                  .orElseGet(() -> serial.reserve(absent)));
        });
    return start(daemon, settings, stations, ports, local(0), true);
  }

  /** A station whose board isn't there. */
  static Served withoutBoard(Path folder, String stationName) {
    return over(folder, stationName, folder.resolve("no-board"));
  }

  /**
   * A station whose board isn't there, with its page where others can reach it.
   *
   * @param http more of the settings' table, in its own words
   */
  static Served forOthers(Path folder, String http) {
    return with(folder, "listen = \"0.0.0.0:8017\"\n" + http);
  }

  /** The same with its page where that table says, at any port. */
  static Served with(Path folder, String http) {
    try {
      Files.createDirectories(folder);
      Files.writeString(folder.resolve("castwell.toml"), "[http]\n" + http);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return withoutBoard(folder, "range");
  }

  /** A station whose board is at a port. */
  static Served at(Path folder, Path port) {
    return over(folder, "range", port);
  }

  /** The same at a port where one was before. */
  static Served again(Path folder, String stationName, int httpPort) {
    return over(folder, stationName, folder.resolve("no-board"), httpPort);
  }

  private static Served over(Path folder, String stationName, Path path) {
    return over(folder, stationName, path, 0);
  }

  private static Served over(Path folder, String stationName, Path path, int httpPort) {
    Daemon daemon = Daemon.open(folder);
    Settings settings = SettingsFile.read(folder);
    PortSpec.Serial spec = new PortSpec.ByPath(path.toString());
    Station station = new Station(stationName, spec, settings.capture().gates());
    Port port = new SerialPorts(() -> System.nanoTime() / 1_000).reserve(spec);
    HttpAddress any = new HttpAddress(settings.listen().host(), httpPort);
    return start(daemon, settings, List.of(station), Map.of(stationName, port), any, false);
  }

  private static HttpAddress local(int port) {
    return new HttpAddress("127.0.0.1", port);
  }

  private static Served start(
      Daemon daemon,
      Settings settings,
      List<Station> stations,
      Map<String, Port> ports,
      HttpAddress address,
      boolean rehearsal) {
    Running running = daemon.start(settings, stations, ports, address, rehearsal, Served::report);
    return new Served(daemon, daemon.commands(settings.capture()), running);
  }

  private static void report(Throwable died) {
    died.printStackTrace();
    throw new AssertionError("the capture died", died);
  }

  /** Speaks to the same announcer as the page's API does. */
  Commands commands() {
    return commands;
  }

  Store store() {
    return daemon.store();
  }

  int httpPort() {
    return running.address().port();
  }

  /** The key that was made at this start. */
  String key() {
    return running.key().orElseThrow();
  }

  boolean madeKey() {
    return running.key().isPresent();
  }

  long refused(Refusals.Kind kind) {
    return running.server().refusals().of(kind);
  }

  URI at(String path) {
    return URI.create("http://127.0.0.1:" + httpPort() + path);
  }

  @Override
  public void close() {
    running.close();
    daemon.close();
  }
}
