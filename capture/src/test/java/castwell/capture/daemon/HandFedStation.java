package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.US_ASCII;

import castwell.analysis.shot.Gate;
import castwell.analysis.wording.Phrase;
import castwell.capture.announce.Announcer;
import castwell.capture.clock.HostClock;
import castwell.capture.derive.Derivation;
import castwell.capture.device.Link;
import castwell.capture.device.Signal;
import castwell.capture.station.BoardsHeard;
import castwell.capture.station.LinkState;
import castwell.capture.station.StationInput;
import castwell.capture.station.StoreState;
import castwell.capture.wire.Crc16;
import castwell.capture.wire.Faults;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * A station fed by hand: sentences at chosen microseconds, and no thread or clock but that. The
 * board's counter stands at two ticks a microsecond.
 */
class HandFedStation {
  static final Instant STARTED = Instant.parse("2026-05-02T09:00:00Z");

  private final String station;
  private final Pipeline pipeline;
  private final List<LinkState> states = new ArrayList<>();
  private final List<StoreState> stores = new ArrayList<>();
  private final StringBuilder asked = new StringBuilder();
  private final Faults faults;
  private int line = 100;

  HandFedStation(RangeBench bench, String station) {
    this(bench, station, new BoardsHeard(), Backlog.MOST, HostClock.recorded(STARTED));
  }

  /**
   * @param boards shared with the stations that are fed at the same time
   */
  HandFedStation(RangeBench bench, String station, BoardsHeard boards) {
    this(bench, station, boards, Backlog.MOST, HostClock.recorded(STARTED));
  }

  /**
   * @param mostWaiting how much is kept in memory while the store takes nothing
   */
  HandFedStation(RangeBench bench, String station, int mostWaiting) {
    this(bench, station, mostWaiting, HostClock.recorded(STARTED));
  }

  HandFedStation(RangeBench bench, String station, int mostWaiting, HostClock clock) {
    this(bench, station, new BoardsHeard(), mostWaiting, clock);
  }

  private HandFedStation(
      RangeBench bench, String station, BoardsHeard boards, int mostWaiting, HostClock clock) {
    this.station = station;
    StationInput input =
        new StationInput(station, "hand", bench.store(), boards, RangeBench.SETTINGS, clock);
    Recorder recorder =
        new Recorder(bench.store(), RangeBench.SETTINGS, new Derivation(RangeBench.SETTINGS));
    this.faults = input.faults();
    this.pipeline =
        new Pipeline(
            input,
            recorder,
            bench.commands(),
            bench.announcer(),
            bench.store(),
            new Backlog(station, clock, mostWaiting, input.waitingFacts()));
    bench.announcer().add(new Told());
    bench.commands().calibrateUnlessSaid(station, Instant.EPOCH, RangeBench.GATES, "hand");
  }

  void plugIn(long micros) {
    passTimeUntil(micros);
    pipeline.hear(new Signal.Opened(station, micros, "hand", new Listener()));
  }

  void pullOut(long micros) {
    passTimeUntil(micros);
    pipeline.hear(new Signal.Closed(station, micros, Phrase.of("link.gone", "hand")));
  }

  /** Lets everything happen that falls due by then. */
  void passTimeUntil(long micros) {
    for (long due = pipeline.nextLook(); due < micros; due = pipeline.nextLook()) {
      pipeline.advance(due);
    }
    pipeline.advance(micros);
  }

  /**
   * @param sentence with its type, but without line number and check sum
   */
  void say(long micros, String sentence) {
    String body = sentence.replaceFirst(",", "," + line++ + ",");
    byte[] bytes = body.getBytes(US_ASCII);
    String crc = String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 0, bytes.length));
    hear(micros, ("$" + body + "*" + crc).getBytes(US_ASCII));
  }

  /** A line as it is. */
  void hear(long micros, byte[] bytes) {
    byte[] withEnd = Arrays.copyOf(bytes, bytes.length + 1);
    withEnd[bytes.length] = '\n';
    receive(micros, withEnd);
  }

  /** Bytes, whether they end a line or not. */
  void receive(long micros, byte[] bytes) {
    passTimeUntil(micros);
    pipeline.hear(new Signal.Received(station, micros, bytes));
  }

  void identity(long micros, int boot) {
    say(micros, "I,1,hand-1,gate-1," + boot + ",2000000,2,0,0,64,P");
  }

  void beat(long micros, int boot, int edges) {
    say(micros, "H,%d,%d,0,%d,0,0,CC,,,,,,".formatted(boot, 2 * micros, edges));
  }

  /** An edge stamped at one instant and heard at another. */
  void edge(long heardMicros, int boot, int number, Gate gate, char kind, long stampedMicros) {
    say(heardMicros, "E,%d,%d,%s,%c,%d,0".formatted(boot, number, gate, kind, 2 * stampedMicros));
  }

  /** The i-th edge of an arrow 0.72 m long at 60.96 m/s, stamped after the passage's first. */
  void edgeOfArrow(long heardMicros, int boot, int firstEdge, int i, long firstMicros) {
    long[] after = {0, 10_000, 11_811, 21_811};
    Gate gate = i % 2 == 0 ? Gate.A : Gate.B;
    edge(heardMicros, boot, firstEdge + i, gate, i < 2 ? 'B' : 'C', firstMicros + after[i]);
  }

  /** A clean passage, heard half a millisecond after each stamp. */
  void arrow(long firstMicros, int boot, int firstEdge) {
    long[] after = {0, 10_000, 11_811, 21_811};
    for (int i = 0; i < 4; i++) {
      edgeOfArrow(firstMicros + after[i] + 500, boot, firstEdge, i, firstMicros);
    }
  }

  /** All that the host wrote, since ever. */
  String asked() {
    return asked.toString();
  }

  /** What was said of the store. */
  List<StoreState> stores() {
    return stores;
  }

  List<LinkState> states() {
    return states;
  }

  LinkState link() {
    return pipeline.link();
  }

  Faults faults() {
    return faults;
  }

  void end(long micros) {
    pipeline.end(micros);
  }

  private final class Listener implements Link {
    @Override
    public int read(byte[] buffer) {
      return 0;
    }

    @Override
    public void write(byte[] bytes) {
      asked.append(new String(bytes, US_ASCII));
    }

    @Override
    public void close() {}
  }

  /** Other stations of the bench are told of too. */
  private final class Told implements Announcer.Listener {
    @Override
    public void fedMore() {}

    @Override
    public void linkChanged(LinkState state) {
      if (state.station().equals(station)) {
        states.add(state);
      }
    }

    @Override
    public void storeChanged(StoreState state) {
      if (state.station().equals(station)) {
        stores.add(state);
      }
    }
  }
}
