package castwell.web.cli;

import castwell.analysis.speed.Calibration;
import castwell.capture.device.Link;
import castwell.capture.device.PortSpec;
import castwell.capture.device.PortUnavailable;
import castwell.capture.device.SerialPorts;
import castwell.capture.recording.RecordingHeader;
import castwell.capture.recording.RecordingWriter;
import castwell.web.settings.Settings;
import castwell.web.settings.SettingsFile;
import castwell.web.wiring.Daemon;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

@Command(
    name = "record",
    description = "Write what a port says as a recording, until Ctrl-C or the cable is pulled.")
final class RecordCommand implements Callable<Integer> {
  @ParentCommand private Castwell castwell;

  @Option(names = "--port", paramLabel = "PATH|auto", description = "Default: ${DEFAULT-VALUE}.")
  private String port = "auto";

  @Parameters(paramLabel = "FILE", description = "The recording to write; it must not exist yet.")
  private Path file;

  @Override
  public Integer call() throws IOException, PortUnavailable {
    Path folder = castwell.data().orDefault();
    Settings settings = SettingsFile.read(folder);
    SerialPorts.unpackInto(folder.resolve("native"));
    PortSpec.Serial spec = Ports.serial(port);
    try (Link link = new SerialPorts(Daemon::micros).reserve(spec).open()) {
      Instant started = Instant.now();
      try (RecordingWriter writer =
          RecordingWriter.create(file, header(settings, started), Daemon.micros())) {
        record(link, writer);
      }
    } catch (FileAlreadyExistsException e) {
      throw new SaidPlainly(file + " exists already: name another file to record to.");
    }
    return 0;
  }

  /**
   * Records a link. The board is asked who it is first, so that the recording says whose edges
   * these are.
   */
  private static void record(Link link, RecordingWriter writer) throws IOException {
    AtomicBoolean ended = new AtomicBoolean();
    Thread recorder = Thread.currentThread();
    Thread hook = new Thread(() -> endOnSignal(link, ended, recorder));
    Runtime.getRuntime().addShutdownHook(hook);
    link.write("?\n".getBytes(StandardCharsets.US_ASCII));
    byte[] buffer = new byte[4096];
    for (int n = link.read(buffer); n >= 0 && !ended.get(); n = link.read(buffer)) {
      if (n > 0) {
        writer.received(Daemon.micros(), Arrays.copyOf(buffer, n));
      }
    }
  }

  private static void endOnSignal(Link link, AtomicBoolean ended, Thread recorder) {
    ended.set(true);
    link.close();
    try {
      recorder.join(2_000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** What nobody measured isn't told, so that whoever replays it knows. */
  private static OptionalDouble measured(Calibration gates, double metres) {
    return gates.isMeasured() ? OptionalDouble.of(metres) : OptionalDouble.empty();
  }

  private RecordingHeader header(Settings settings, Instant started) {
    Calibration gates = settings.capture().gates();
    String name = file.getFileName().toString().replaceFirst("\\.rec$", "");
    return new RecordingHeader(
        name,
        started,
        measured(gates, gates.spacingM()),
        measured(gates, gates.spacingUM()),
        OptionalDouble.of(gates.gatesFromBowM()),
        Map.of());
  }
}
