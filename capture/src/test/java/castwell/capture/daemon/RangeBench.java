package castwell.capture.daemon;

import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.capture.announce.Announcer;
import castwell.capture.assembly.AssemblyTiming;
import castwell.capture.command.Commands;
import castwell.capture.recording.BadRecording;
import castwell.capture.recording.Recording;
import castwell.capture.settings.AirSettings;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Sessions;
import castwell.capture.store.Shot;
import castwell.capture.store.Store;
import castwell.capture.wire.Faults;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;

/** A data folder and all that works on it, set as the program is when nobody changed a setting. */
public final class RangeBench implements AutoCloseable {
  static final Calibration GATES =
      new Calibration(0.6096, 0.0003, 0.001, 2.0, Oscillator.RESONATOR);
  public static final CaptureSettings SETTINGS =
      new CaptureSettings(
          AssemblyTiming.defaults(),
          Limits.defaults(),
          GATES,
          new AirSettings(0, 15, 0.5),
          50e-6 / Math.sqrt(3),
          ZoneOffset.UTC);

  private final Path folder;
  private final Store store;
  private final Announcer announcer = new Announcer();
  private final Commands commands;
  private final Clock clock;

  private RangeBench(Path folder, Clock clock) {
    this.folder = folder;
    this.clock = clock;
    this.store = Store.open(folder);
    this.commands = new Commands(store, SETTINGS, announcer, clock);
  }

  static RangeBench in(Path folder) {
    return new RangeBench(
        folder, Clock.fixed(Instant.parse("2026-06-01T12:00:00Z"), ZoneOffset.UTC));
  }

  static RangeBench in(Path folder, Clock clock) {
    return new RangeBench(folder, clock);
  }

  Path folder() {
    return folder;
  }

  Store store() {
    return store;
  }

  Commands commands() {
    return commands;
  }

  Clock clock() {
    return clock;
  }

  Announcer announcer() {
    return announcer;
  }

  /** Takes a recording in at a station of its name, with the gates that its header tells. */
  Faults replay(Path file) throws BadRecording, InterruptedException {
    try (Recording recording = Recording.open(file)) {
      var header = recording.header();
      Calibration gates =
          new Calibration(
              header.gateSpacingM().orElse(GATES.spacingM()),
              header.gateSpacingUncertaintyM().orElse(GATES.spacingUM()),
              GATES.triggerScatterM(),
              header.gatesFromBowM().orElse(GATES.gatesFromBowM()),
              GATES.oscillator());
      commands.calibrateUnlessSaid(header.name(), header.started(), gates, "recording");
      return new Replay(store, SETTINGS, commands)
          .replay(header.name(), recording, Replay.Pace.asFastAsItGoes(micros -> {}));
    }
  }

  /** A station's passages, session by session, the first first. */
  List<Shot> shots(String station) {
    return store.read(
        t ->
            t.sessions().all().stream()
                .filter(session -> session.station().equals(station))
                .sorted(Comparator.comparing(Sessions.Session::startedMs))
                .flatMap(session -> t.shots().ofSession(session.name()).stream())
                .toList());
  }

  Tables tables() {
    return new Tables(folder);
  }

  @Override
  public void close() {
    store.close();
  }
}
