package castwell.web.cli;

import castwell.capture.device.Port;
import castwell.capture.device.PortSpec;
import castwell.capture.device.PortUnavailable;
import castwell.capture.device.SerialPorts;
import castwell.web.settings.HttpAddress;
import castwell.web.settings.Settings;
import castwell.web.settings.Settings.Station;
import castwell.web.settings.SettingsFile;
import castwell.web.wiring.Daemon;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

@Command(name = "run", description = "Capture shots and serve the page, until it is told to end.")
final class RunCommand implements Callable<Integer> {
  @ParentCommand private Castwell castwell;
  @Mixin private HttpOption http;
  @Mixin private WatchOption watch;

  @Option(
      names = "--port",
      paramLabel = "PATH|auto|mqtt",
      description =
          "Where the board is, instead of the settings file's; once for each board. A path must be there now.")
  private List<String> ports = List.of();

  @Override
  public Integer call() throws IOException, InterruptedException, PortUnavailable {
    Path folder = castwell.data().orDefault();
    try (Daemon daemon = Daemon.open(folder)) {
      SerialPorts.unpackInto(folder.resolve("native"));
      Settings settings = watch.over(SettingsFile.read(folder));
      List<Station> stations = stations(settings);
      SerialPorts serial = new SerialPorts(Daemon::micros);
      Map<String, Port> byStation = new LinkedHashMap<>();
      for (int i = 0; i < stations.size(); i++) {
        Station station = stations.get(i);
        boolean named = i < ports.size() && station.port() instanceof PortSpec.ByPath;
        Port port = Ports.of(station, settings, serial);
        byStation.put(station.name(), named ? Ports.opened(port) : port);
      }
      HttpAddress address = http.or(settings.listen());
      daemon.run(settings, stations, byStation, address, false);
    }
    return 0;
  }

  /** The settings' stations with the command line's ports; more ports make more stations. */
  private List<Station> stations(Settings settings) {
    List<Station> stations = new ArrayList<>();
    for (int i = 0; i < ports.size(); i++) {
      PortSpec spec = Ports.parse(ports.get(i));
      Optional<Station> known =
          i < settings.stations().size()
              ? Optional.of(settings.stations().get(i))
              : Optional.empty();
      stations.add(
          new Station(
              known.map(Station::name).orElse("range-" + (i + 1)),
              spec,
              known.map(Station::gates).orElse(settings.capture().gates())));
    }
    return ports.isEmpty() ? settings.stations() : stations;
  }
}
