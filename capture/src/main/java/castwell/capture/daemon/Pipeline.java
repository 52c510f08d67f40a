package castwell.capture.daemon;

import castwell.capture.announce.Announcer;
import castwell.capture.command.Commands;
import castwell.capture.daemon.Recorder.Recorded;
import castwell.capture.device.Signal;
import castwell.capture.station.ClosedPassage;
import castwell.capture.station.FaultCounts;
import castwell.capture.station.LinkState;
import castwell.capture.station.StationInput;
import castwell.capture.station.StationInput.Heard;
import castwell.capture.station.StoreState;
import castwell.capture.station.WaitingFacts;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.Store;
import castwell.capture.store.StoreUnavailable;
import castwell.capture.wire.Faults;
import castwell.capture.wire.Sentence;
import java.util.List;
import java.util.Optional;

/**
 * One station's way from a signal to the disk and to whoever listens. While the store takes
 * nothing, what comes waits in memory. Once that is full, the board isn't listened to, and is asked
 * afterwards for what it still keeps. One thread uses this.
 */
final class Pipeline {
  private static final byte[] NOTHING = {};

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
    byte[] bytes = NOTHING;
    if (signal instanceof Signal.Opened opened) {
      open(opened);
    } else if (signal instanceof Signal.Closed closed) {
      link = Optional.empty();
      input.closed(closed);
    } else if (signal instanceof Signal.Received received && !deaf) {
      bytes = received.bytes();
    }
    turn(bytes, signal.micros());
  }

  void advance(long micros) {
    turn(NOTHING, micros);
  }

  /**
   * Takes an arrow its whole way, in five steps. What the disk doesn't take waits between the
   * second and the third; nobody hears of a passage before it is written.
   */
  private void turn(byte[] bytes, long micros) {
    List<Sentence> sentences = input.decode(bytes); // 1. bytes to sentences
    attempt(() -> input.assemble(sentences, micros), micros); // 2. edges to closed passages
    takeOver(micros);
    for (var next = backlog.pickUp(micros); next.isPresent(); next = backlog.pickUp(micros)) {
      if (tryToWrite(next.get(), micros)) { // 3. speed and verdict, 4. one transaction
        announcer.fedMore(); // 5. whoever listens reads what is new
      }
    }
    backlog.takeChanges().forEach(announcer::storeChanged);
    listenIfItCanBeKept(micros);
  }

  /** Closes what is open and brings every figure up to date. */
  void end(long micros) {
    link = Optional.empty(); // Nothing is listened to anew once the disk takes what waited.
    attempt(() -> input.end(micros), micros);
    takeOver(micros);
    backlog.add(new Write.Flush());
    backlog.retryNow();
    turn(NOTHING, micros);
  }

  /**
   * Lets the station hear. It may have to look up in the store, or enter there, what it hears of
   * for the first time; where the store refuses, the board is asked for all of it again later.
   */
  private void attempt(Runnable hearing, long micros) {
    try {
      hearing.run();
    } catch (StoreUnavailable e) {
      backlog.noteRefused(e, micros);
      stopListening(micros);
    }
  }

  private void takeOver(long micros) {
    Heard heard = input.takeHeard();
    heard.links().forEach(announcer::linkChanged);
    heard.beats().forEach(beat -> announcer.beatHeard(input.station(), beat));
    heard.keys().forEach(press -> backlog.add(new Write.KeyPress(press.key(), press.at())));
    heard.passages().forEach(passage -> backlog.add(new Write.Shot(passage)));
    if (input.isFlushDue(micros) && backlog.isEmpty()) {
      backlog.add(new Write.Flush());
    }
    input.scheduleFlush(micros);
  }

  private void open(Signal.Opened opened) {
    link = Optional.of(opened);
    if (!deaf) {
      input.opened(opened);
    }
  }

  private void stopListening(long micros) {
    deaf = true;
    input.stopListening(micros);
  }

  /**
   * Listens again, or stops, by whether what is heard can be kept. The station then listens as over
   * a new link, but the port stays open, since opening it would restart many boards.
   */
  private void listenIfItCanBeKept(long micros) {
    if (backlog.isFull() && !deaf) {
      stopListening(micros);
    } else if (deaf && !backlog.isInTrouble()) {
      deaf = false;
      link.ifPresent(open -> input.opened(open.at(micros)));
      attempt(() -> input.advance(micros), micros);
    }
  }

  /**
   * Tries to put a write on the disk.
   *
   * @return whether it is on the disk and the feed tells of it
   */
  private boolean tryToWrite(Write write, long micros) {
    try {
      boolean fed = write(write);
      backlog.noteWritten();
      return fed;
    } catch (StoreUnavailable e) {
      backlog.noteRefused(e, micros);
      return false;
    }
  }

  /**
   * Puts a write on the disk.
   *
   * @return whether the feed tells of it and listeners are still to be told; a key's command tells
   *     them itself
   */
  private boolean write(Write write) {
    if (write instanceof Write.Shot shot) {
      record(shot.passage());
      return true;
    }
    if (write instanceof Write.KeyPress press) {
      commands.key(input.station(), press.key(), press.at());
      return false;
    }
    if (write instanceof Write.Flush) {
      flush();
      return refresh();
    }
    if (write instanceof Write.Refresh) {
      return refresh();
    }
    store.probe();
    return false;
  }

  private void record(ClosedPassage passage) {
    WaitingFacts facts = input.waitingFacts();
    facts.enterListenings();
    long listening = input.listenings().enter(passage.listening());
    Recorded recorded = recorder.record(passage, listening, facts::write);
    facts.clear();
    if (recorded.isFirst()) {
      input.recall(passage.board(), recorded.earlierBeats());
    } else if (recorded.beginsSession()) {
      input.beginSession(passage.board());
    }
    if (recorded.knowsBetter()) {
      backlog.add(new Write.Refresh());
    }
  }

  private void flush() {
    WaitingFacts facts = input.waitingFacts();
    facts.enterListenings();
    store.writing(facts::write);
    facts.clear();
  }

  /**
   * Derives the session's figures again where the board's tick rate is known better now; returns
   * whether any changed.
   */
  private boolean refresh() {
    return input
        .board()
        .map(board -> recorder.refresh(input.station(), board.id(), input.rates()))
        .orElse(false);
  }
}
