package castwell.capture.daemon;

import castwell.capture.announce.Announcer;
import castwell.capture.command.Commands;
import castwell.capture.device.Signal;
import castwell.capture.station.ClosedPassage;
import castwell.capture.station.FaultCounts;
import castwell.capture.station.LinkState;
import castwell.capture.station.StationInput;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.Store;
import castwell.capture.store.StoreUnavailable;
import castwell.capture.wire.Faults;
import java.util.List;
import java.util.Optional;

/**
 * One station's way from a signal to the disk and to whoever listens. While the store takes nothing
 * what comes waits in memory; once that is full, the board isn't listened to, and is asked
 * afterwards for what it still keeps. Used by one thread.
 */
final class Pipeline {
  private final StationInput input;
  private final Recorder recorder;
  private final Commands commands;
  private final Announcer announcer;
  private final Store store;
  private final Backlog backlog;
  private Optional<Signal.Opened> link = Optional.empty();
  private boolean deaf;

  Pipeline(
      StationInput input,
      Recorder recorder,
      Commands commands,
      Announcer announcer,
      Store store,
      Backlog backlog) {
    this.input = input;
    this.recorder = recorder;
    this.commands = commands;
    this.announcer = announcer;
    this.store = store;
    this.backlog = backlog;
  }

  LinkState link() {
    return input.link();
  }

  Faults faults() {
    return input.faults();
  }

  FaultCounts recentFaults() {
    return input.recentFaults().counts();
  }

  List<HeardBeat> recentBeats() {
    return input.recentBeats().all();
  }

  StoreState store() {
    return backlog.state();
  }

  long nextLook() {
    return Math.min(input.nextLook(), backlog.nextLook());
  }

  void hear(Signal signal) {
    if (signal instanceof Signal.Opened opened) {
      link = Optional.of(opened);
    } else if (signal instanceof Signal.Closed) {
      link = Optional.empty();
    }
    if (!deaf || signal instanceof Signal.Closed) {
      attempt(() -> input.hear(signal), signal.micros());
    }
    pass(signal.micros());
  }

  void advance(long micros) {
    attempt(() -> input.advance(micros), micros);
    pass(micros);
  }

  /** Closes what is open and brings every figure up to date. */
  void end(long micros) {
    attempt(() -> input.end(micros), micros);
    takeOver();
    backlog.add(this::flush);
    backlog.writeNow(micros);
  }

  /**
   * A station looks up and enters what it hears of for the first time. Where the store doesn't let it,
   * the board is asked for all of it again later.
   */
  private void attempt(Runnable hearing, long micros) {
    try {
      hearing.run();
    } catch (StoreUnavailable e) {
      backlog.refused(e, micros);
      stopListening(micros);
    }
  }

  private void stopListening(long micros) {
    deaf = true;
    input.stopListening(micros);
  }

  /** As over a new link: closing and opening the port would start many a board anew. */
  private void listenAgain(long micros) {
    deaf = false;
    link.ifPresent(open -> attempt(() -> input.hear(open.at(micros)), micros));
  }

  private void pass(long micros) {
    takeOver();
    if (input.isFlushDue(micros) && backlog.isEmpty()) {
      backlog.add(this::flush);
    }
    backlog.write(micros);
    if (backlog.isFull() && !deaf) {
      stopListening(micros);
    } else if (deaf && !backlog.isInTrouble()) {
      listenAgain(micros);
    }
  }

  private void takeOver() {
    input.takeBeats().forEach(beat -> announcer.beatHeard(input.station(), beat));
    for (StationInput.KeyPress press : input.takeKeys()) {
      backlog.add(() -> commands.key(input.station(), press.key(), press.at()));
    }
    for (ClosedPassage passage : input.takeClosed()) {
      backlog.addShot(() -> record(passage));
    }
  }

  /** Each passage is committed before anyone hears of it. */
  private void record(ClosedPassage passage) {
    input.waitingFacts().enterListenings();
    boolean rateMoved = recorder.record(passage, input.waitingFacts()::write);
    input.waitingFacts().written();
    announcer.fedMore();
    if (rateMoved) {
      backlog.add(this::refresh);
    }
  }

  private void flush() {
    input.waitingFacts().enterListenings();
    store.writing(input.waitingFacts()::write);
    input.waitingFacts().written();
    refresh();
  }

  /** Brings the session's figures up to the board's tick rate as it is known now. */
  private void refresh() {
    boolean moved =
        input
            .board()
            .map(board -> recorder.refresh(input.station(), board.id(), input.boardClock()))
            .orElse(false);
    if (moved) {
      announcer.fedMore();
    }
  }
}
