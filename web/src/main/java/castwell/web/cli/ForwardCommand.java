package castwell.web.cli;

import castwell.analysis.wording.Phrase;
import castwell.capture.device.Forwarder;
import castwell.capture.device.Port;
import castwell.capture.device.PortSpec;
import castwell.capture.device.PortUnavailable;
import castwell.capture.device.SerialPorts;
import castwell.capture.publish.WirePort;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.web.settings.Settings;
import castwell.web.settings.SettingsFile;
import castwell.web.text.Speech;
import castwell.web.wiring.Daemon;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

@Command(
    name = "forward",
    description =
        "Pass a board's sentences on to a broker, for a Castwell that runs elsewhere and whose station says port = \"mqtt\"; until Ctrl-C. Nothing is kept here.")
final class ForwardCommand implements Callable<Integer> {
  @ParentCommand private Castwell castwell;

  @Option(
      names = "--port",
      paramLabel = "PATH|auto",
      description = "Where the board is. A path must be there now. Default: ${DEFAULT-VALUE}.")
  private String port = "auto";

  @Option(
      names = "--station",
      required = true,
      paramLabel = "NAME",
      description = "What the station is named where the board is listened to.")
  private String station;

  @Option(
      names = "--broker",
      paramLabel = "URL",
      description =
          "mqtt://HOST[:PORT], or mqtts:// for TLS, instead of the settings file's. User, password and certificates are in [mqtt] there, or in the environment.")
  private String broker;

  @Override
  public Integer call()
      throws IOException, InterruptedException, PortUnavailable, BrokerUnavailable {
    Path folder = castwell.data().orDefault();
    WirePort away =
        WirePort.ofForwarder(broker(SettingsFile.read(folder, environment())), stationName());
    PortSpec.Serial spec = Ports.serial(port);
    SerialPorts.unpackInto(folder.resolve("native"));
    Port board = new SerialPorts(Daemon::micros).reserve(spec);
    forward(spec instanceof PortSpec.ByPath ? Ports.opened(board) : board, away);
    return 0;
  }

  private static void forward(Port board, Port away) throws InterruptedException {
    CompletableFuture<Void> ended = new CompletableFuture<>();
    try (Forwarder forwarder =
        new Forwarder(
            board, away, Daemon::micros, ForwardCommand::say, ended::completeExceptionally)) {
      forwarder.start();
      ended.get(); // A signal ends the process, and nothing has to be finished before.
    } catch (ExecutionException e) {
      throw new IllegalStateException("the forwarding ended", e.getCause());
    }
  }

  private static void say(Phrase phrase) {
    System.out.println(Speech.TRADE.say(phrase));
    System.out.flush();
  }

  private Map<String, String> environment() {
    Map<String, String> environment = new HashMap<>(System.getenv());
    if (broker != null) {
      environment.put("CASTWELL_MQTT_URL", broker);
    }
    return environment;
  }

  private String stationName() {
    try {
      return Settings.stationName(station);
    } catch (IllegalArgumentException e) {
      throw new SaidPlainly("--station: " + e.getMessage() + ".");
    }
  }

  /**
   * Checks the broker's settings. A wrong address is reported at once, while a broker that can't be
   * reached may come later.
   */
  private static BrokerSettings broker(Settings settings) throws BrokerUnavailable {
    BrokerSettings broker =
        settings
            .broker()
            .orElseThrow(
                () ->
                    new SaidPlainly(
                        "No broker is named: give --broker mqtt://HOST, or write its url in [mqtt] of the settings file."));
    broker.broker();
    return broker;
  }
}
