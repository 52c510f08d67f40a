package castwell.capture.daemon;

import castwell.capture.device.Signal;
import castwell.capture.store.Store;
import castwell.capture.wire.Faults;

/** One station's way from a signal to the disk and to whoever listens. Used by one thread. */
final class Pipeline {
  private final Lane lane;
  private final Recorder recorder;
  private final Desk desk;
  private final Announcer announcer;
  private final Store store;

  Pipeline(Lane lane, Recorder recorder, Desk desk, Announcer announcer, Store store) {
    this.lane = lane;
    this.recorder = recorder;
    this.desk = desk;
    this.announcer = announcer;
    this.store = store;
  }

  LinkState link() {
    return lane.link();
  }

  Faults faults() {
    return lane.faults();
  }

  long nextLook() {
    return lane.nextLook();
  }

  void hear(Signal signal) {
    lane.hear(signal);
    pass(signal.micros());
  }

  void advance(long micros) {
    lane.advance(micros);
    pass(micros);
  }

  /** Closes what is open and brings every figure up to date. */
  void end(long micros) {
    lane.end(micros);
    pass(micros);
    flush();
  }

  /** Each passage is committed before anyone hears of it. */
  private void pass(long micros) {
    for (Lane.KeyPress press : lane.takeKeys()) {
      desk.key(lane.station(), press.key(), press.at());
    }
    for (ClosedPassage passage : lane.takeClosed()) {
      recorder.record(passage, lane.facts()::write);
      lane.facts().written();
      announcer.fedMore();
    }
    if (lane.isFlushDue(micros)) {
      flush();
    }
  }

  private void flush() {
    store.writing(lane.facts()::write);
    lane.facts().written();
    boolean moved =
        lane.board()
            .map(board -> recorder.refresh(lane.station(), board.id(), lane.boardClock()))
            .orElse(false);
    if (moved) {
      announcer.fedMore();
    }
  }
}
