package castwell.web.cli;

import castwell.analysis.speed.Calibration;
import castwell.capture.announce.Announcer;
import castwell.capture.command.Commands;
import castwell.capture.daemon.Replay;
import castwell.capture.daemon.Replay.Pace;
import castwell.capture.recording.BadRecording;
import castwell.capture.recording.Recording;
import castwell.capture.recording.RecordingHeader;
import castwell.capture.store.Store;
import castwell.web.settings.Settings;
import castwell.web.settings.SettingsFile;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

@Command(
    name = "replay",
    description =
        "Take recordings in, through the same code as a live board. What is there already is left as it is.")
final class ReplayCommand implements Callable<Integer> {
  @ParentCommand private Castwell castwell;

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Recordings.")
  private List<Path> files;

  @Option(names = "--pace", description = "At the pace of the recording, not as fast as it goes.")
  private boolean pace;

  @Option(names = "--bow", paramLabel = "NAME", description = "The bow that shot.")
  private Optional<String> bow = Optional.empty();

  @Option(names = "--arrow", paramLabel = "NAME", description = "The arrow that was shot.")
  private Optional<String> arrow = Optional.empty();

  @Override
  public Integer call() throws BadRecording, InterruptedException {
    for (Path file : files) {
      Recording.open(file).close(); // Every file has to be sound before the first one is taken in.
    }
    Path folder = castwell.data().orDefault();
    try (Store store = Store.open(folder)) {
      Settings settings = SettingsFile.read(folder);
      Commands commands =
          new Commands(store, settings.capture(), new Announcer(), Clock.systemUTC());
      for (Path file : files) {
        try (Recording recording = Recording.open(file)) {
          replay(store, settings, commands, file, recording);
        }
      }
    }
    return 0;
  }

  private void replay(
      Store store, Settings settings, Commands commands, Path file, Recording recording)
      throws InterruptedException {
    RecordingHeader header = recording.header();
    String station = station(header.name());
    Calibration gates = gates(header, settings.capture().gates());
    if (bow.isPresent() || arrow.isPresent()) {
      commands.tag(station, header.started(), bow, arrow, "replay");
    }
    commands.calibrateUnlessSaid(station, header.started(), gates, "recording");
    try (ProgressBar progress =
        new ProgressBar(file.getFileName().toString(), recording.sizeBytes())) {
      Runnable reached = () -> progress.reached(recording.bytesRead());
      new Replay(store, settings.capture(), commands).replay(station, recording, pace(reached));
    }
  }

  private Pace pace(Runnable reached) {
    long began = System.nanoTime();
    return pace
        ? Pace.ofTheRecording(
            micros -> {
              reached.run();
              long due = began + TimeUnit.MICROSECONDS.toNanos(micros);
              TimeUnit.NANOSECONDS.sleep(Math.max(0, due - System.nanoTime()));
            })
        : Pace.asFastAsItGoes(micros -> reached.run());
  }

  private static Calibration gates(RecordingHeader header, Calibration otherwise) {
    return new Calibration(
        header.gateSpacingM().orElse(otherwise.spacingM()),
        header.gateSpacingUncertaintyM().orElse(otherwise.spacingUM()),
        otherwise.triggerScatterM(),
        header.gatesFromBowM().orElse(otherwise.gatesFromBowM()),
        otherwise.oscillator(),
        header.gateSpacingM().isPresent() || otherwise.isMeasured(),
        otherwise.errors());
  }

  /**
   * The station of a recording. Each recording is one of its own, so that its gates are told apart
   * from others'.
   */
  private static String station(String name) {
    String plain = name.replaceAll("[^A-Za-z0-9._-]", "-");
    return plain.isEmpty() ? "recording" : plain.substring(0, Math.min(32, plain.length()));
  }
}
