package castwell.capture.daemon;

import castwell.capture.device.Link;
import castwell.capture.device.RecordedLine;
import castwell.capture.device.Recording;
import castwell.capture.device.RecordingHeader;
import castwell.capture.device.Signal;
import castwell.capture.store.Store;
import castwell.capture.wire.Faults;
import java.io.ByteArrayOutputStream;
import java.util.Optional;

/** A recording through the same lane, assembler and recorder as a live port. */
public final class Replay {
  private static final long A_MINUTE_MICROS = 60_000_000;

  private final Store store;
  private final CaptureSettings settings;
  private final Desk desk;

  /** Hears of every line before it is replayed. */
  @FunctionalInterface
  public interface Pace {
    void before(long micros) throws InterruptedException;
  }

  public Replay(Store store, CaptureSettings settings, Desk desk) {
    this.store = store;
    this.settings = settings;
    this.desk = desk;
  }

  /**
   * @return what went wrong on the wire, by kind
   */
  public Faults replay(String station, Recording recording, Pace pace) throws InterruptedException {
    RecordingHeader header = recording.header();
    HostClock clock = HostClock.recorded(header.started());
    Announcer nobody = new Announcer();
    Lane lane =
        new Lane(
            station,
            "recording " + header.name(),
            store,
            new BoardsHeard(),
            settings,
            clock,
            state -> {});
    Recorder recorder = new Recorder(store, settings, new Reprocessing(settings));
    Pipeline pipeline =
        new Pipeline(
            lane,
            recorder,
            desk,
            nobody,
            store,
            new Backlog(station, clock, 0, () -> 0, () -> {}, state -> {}));
    pipeline.hear(new Signal.Opened(station, 0, "recording " + header.name(), new Mute()));
    long last = 0;
    for (Optional<RecordedLine> line = recording.next();
        line.isPresent();
        line = recording.next()) {
      last = line.get().micros();
      pace.before(last);
      advance(pipeline, last);
      pipeline.hear(new Signal.Received(station, last, withLineEnd(line.get().bytes())));
    }
    advance(pipeline, last + A_MINUTE_MICROS);
    pipeline.end(last + A_MINUTE_MICROS);
    return lane.faults();
  }

  /** Lets everything happen that a live clock would have let happen by then. */
  private static void advance(Pipeline pipeline, long until) {
    long due = pipeline.nextLook();
    while (due < until) {
      pipeline.advance(due);
      long next = pipeline.nextLook();
      if (next <= due) {
        throw new IllegalStateException("a lane asks for the same moment again: " + due);
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

  /** A recording can't be asked anything. */
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
