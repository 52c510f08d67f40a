package castwell.web.cli;

import castwell.capture.device.Port;
import castwell.web.settings.Settings;
import castwell.web.settings.Settings.Station;
import castwell.web.settings.SettingsFile;
import castwell.web.wiring.Daemon;
import castwell.web.wiring.Rehearsal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

@Command(
    name = "rehearse",
    description =
        "The same as run, on a pretended range: invented bows, arrows and mishaps, for whoever has no board yet. It keeps its shots in a data folder of its own.")
final class RehearseCommand implements Callable<Integer> {
  @ParentCommand private Castwell castwell;
  @Mixin private HttpOption http;
  @Mixin private WatchOption watch;

  @Option(
      names = "--every",
      paramLabel = "SECONDS",
      description = "Seconds between two arrows. Default: ${DEFAULT-VALUE}.")
  private double seconds = 7;

  @Option(
      names = "--seed",
      description = "The same seed shoots the same arrows. Default: the clock.")
  private long seed = System.currentTimeMillis();

  @Override
  public Integer call() throws InterruptedException {
    if (!(seconds >= 0.5 && seconds <= 3600)) {
      throw new SaidPlainly("--every takes 0.5 to 3600 seconds, not " + seconds + ".");
    }
    Path folder = castwell.data().orDefault("castwell-rehearsal");
    try (Daemon daemon = Daemon.open(folder)) {
      Settings settings = watch.over(SettingsFile.read(folder));
      Station station = Rehearsal.station(settings);
      Rehearsal.fillRack(daemon.store(), daemon.commands(settings.capture()));
      Port port = Rehearsal.port(daemon.store(), station, seed, seconds, Daemon::micros);
      daemon.run(
          settings,
          List.of(station),
          Map.of(station.name(), port),
          http.or(settings.listen()),
          true);
    }
    return 0;
  }
}
