package castwell.capture.daemon;

import castwell.capture.announce.Announcer;
import castwell.capture.clock.HostClock;
import castwell.capture.command.Commands;
import castwell.capture.derive.Derivation;
import castwell.capture.device.Link;
import castwell.capture.device.Signal;
import castwell.capture.recording.RecordedLine;
import castwell.capture.recording.Recording;
import castwell.capture.recording.RecordingHeader;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.station.BoardsHeard;
import castwell.capture.station.StationInput;
import castwell.capture.store.Store;
import castwell.capture.wire.Faults;
import java.io.ByteArrayOutputStream;
import java.util.List;

/** Replays a recording through the same station input, assembler and recorder as a live port. */
public final class Replay {
  private static final long A_MINUTE_MICROS = 60_000_000;

  private final Store store;
  private final CaptureSettings settings;
  private final Commands commands;

  /**
   * The pace of a replay.
   *
   * @param lines how many lines are taken in and committed together, since a commit takes long
   * @param waiting waits until the first of them is due
   */
  public record Pace(int lines, Waiting waiting) {
    private static final int MANY = 2000;

    /**
     * Waits until a moment of the recording, in micros, before the lines of that moment are taken
     * in.
     */
    @FunctionalInterface
    public interface Waiting {
      void until(long micros) throws InterruptedException;
    }

    public static Pace ofTheRecording(Waiting waiting) {
      return new Pace(1, waiting);
    }

    public static Pace asFastAsItGoes(Waiting waiting) {
      return new Pace(MANY, waiting);
    }
  }

  public Replay(Store store, CaptureSettings settings, Commands commands) {
    this.store = store;
    this.settings = settings;
    this.commands = commands;
  }

  /**
   * Replays a whole recording as one station.
   *
   * @return what went wrong on the wire, by kind
   */
  public Faults replay(String station, Recording recording, Pace pace) throws InterruptedException {
    RecordingHeader header = recording.header();
    HostClock clock = HostClock.recorded(header.started());
    Announcer nobody = new Announcer();
    StationInput input =
        new StationInput(
            station, "recording " + header.name(), store, new BoardsHeard(), settings, clock);
    Recorder recorder = new Recorder(store, settings, new Derivation(settings));
    Pipeline pipeline =
        new Pipeline(
            input,
            recorder,
            commands,
            nobody,
            store,
            new Backlog(station, clock, 0, input.waitingFacts()));
    pipeline.hear(new Signal.Opened(station, 0, "recording " + header.name(), new Mute()));
    long last = 0;
    for (List<RecordedLine> some = recording.next(pace.lines());
        !some.isEmpty();
        some = recording.next(pace.lines())) {
      last = some.get(some.size() - 1).micros();
      pace.waiting().until(some.get(0).micros());
      List<RecordedLine> lines = some;
      store.writing(t -> lines.forEach(line -> hear(pipeline, station, line)));
    }
    long end = last + A_MINUTE_MICROS;
    store.writing(
        t -> {
          advance(pipeline, end);
          pipeline.end(end);
        });
    return input.faults();
  }

  private static void hear(Pipeline pipeline, String station, RecordedLine line) {
    advance(pipeline, line.micros());
    pipeline.hear(new Signal.Received(station, line.micros(), withLineEnd(line.bytes())));
  }

  /** Lets everything happen that a live clock would have let happen by then. */
  private static void advance(Pipeline pipeline, long until) {
    long due = pipeline.nextLook();
    while (due < until) {
      pipeline.advance(due);
      long next = pipeline.nextLook();
      if (next <= due) {
        throw new IllegalStateException("a station asks for the same moment again: " + due);
      }
      due = next;
    }
  }

  private static byte[] withLineEnd(byte[] line) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(line.length + 2);
    bytes.writeBytes(line);
    bytes.write('\r');
    bytes.write('\n');
    return bytes.toByteArray();
  }

  /** A link that answers nothing, since a recording can't be asked anything. */
  private static final class Mute implements Link {
    @Override
    public int read(byte[] buffer) {
      return -1;
    }

    @Override
    public void write(byte[] bytes) {}

    @Override
    public void close() {}
  }
}
