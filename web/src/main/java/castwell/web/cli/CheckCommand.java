package castwell.web.cli;

import castwell.capture.device.SerialPorts;
import castwell.capture.health.Checkup;
import castwell.capture.health.HealthView;
import castwell.capture.health.PortTrial;
import castwell.capture.health.StoredBeats;
import castwell.capture.health.Witness;
import castwell.capture.store.Store;
import castwell.capture.view.Json;
import castwell.capture.view.health.Level;
import castwell.capture.view.health.WholeHealth;
import castwell.web.settings.Settings;
import castwell.web.settings.Settings.Station;
import castwell.web.settings.SettingsFile;
import castwell.web.text.Speech;
import castwell.web.wiring.Daemon;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

@Command(
    name = "check",
    description =
        "Say what is well, what isn't, and what to do. Asks the Castwell that runs; where none does, listens to the ports for some seconds. Exit code 1 when something is bad.")
final class CheckCommand implements Callable<Integer> {
  private static final int SOMETHING_IS_BAD = 1;
  private static final Clock CLOCK = Clock.systemUTC();
  private static final Optional<String> KEY = Optional.ofNullable(System.getenv("CASTWELL_KEY"));

  @ParentCommand private Castwell castwell;
  @Mixin private HttpOption http;

  @Option(names = "--format", description = "${COMPLETION-CANDIDATES}. Default: text.")
  private Format format = Format.text;

  /** The forms in which the answer can be written. */
  enum Format {
    text,
    json
  }

  @Override
  public Integer call() throws IOException {
    Path folder = castwell.data().orDefault();
    Settings settings = SettingsFile.read(folder);
    WholeHealth health =
        Store.isHeld(folder)
            ? besideTheRunningOne(folder, settings)
            : byListening(folder, settings);
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    out.print(
        format == Format.json
            ? Json.indented(health) + System.lineSeparator()
            : HealthText.of(health));
    return health.level() == Level.BAD ? SOMETHING_IS_BAD : 0;
  }

  /**
   * Asks a Castwell that is running, which has the ports; they are left alone. Where it doesn't
   * answer, what it stored is judged.
   */
  private WholeHealth besideTheRunningOne(Path folder, Settings settings) {
    RunningCastwell running = new RunningCastwell(http.or(settings.listen()), KEY);
    Optional<WholeHealth> told = running.health();
    if (told.isPresent()) {
      return told.get();
    }
    System.err.printf(
        "castwell: A Castwell that runs here has the ports, and doesn't tell at http://%s how it is (where it takes a key, set CASTWELL_KEY to it): this is what it stored.%n",
        running.address());
    try (Store store = Store.openToRead(folder)) {
      return health(store, settings, new StoredBeats(store, CLOCK));
    }
  }

  private static WholeHealth byListening(Path folder, Settings settings) throws IOException {
    SerialPorts.unpackInto(folder.resolve("native"));
    try (Store store = Store.open(folder)) {
      PortTrial trial = new PortTrial(CLOCK, Daemon::micros);
      SerialPorts ports = new SerialPorts(Daemon::micros);
      for (Station station : settings.stations()) {
        trial.listen(station.name(), Ports.of(station, settings, ports));
      }
      return health(store, settings, trial);
    }
  }

  private static WholeHealth health(Store store, Settings settings, Witness witness) {
    Checkup checkup =
        new Checkup(
            store,
            settings.capture(),
            settings.stations().stream().map(Station::name).toList(),
            witness,
            CLOCK);
    return new HealthView(checkup, Speech.TRADE).all();
  }
}
