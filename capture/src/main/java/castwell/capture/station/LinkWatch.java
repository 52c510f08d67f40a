package castwell.capture.station;

import castwell.analysis.wording.Phrase;
import castwell.capture.clock.HostClock;
import castwell.capture.station.LinkState.State;
import castwell.capture.wire.Sentence.Levels;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Keeps a station's {@link LinkState}, and the changes of it that nobody was told of yet. */
final class LinkWatch {
  static final long OFFLINE_AFTER_MICROS = 3_000_000;

  private final HostClock clock;
  private final List<LinkState> untold = new ArrayList<>();
  private volatile LinkState state;
  private long offlineAt = Long.MAX_VALUE;

  LinkWatch(String station, String port, HostClock clock) {
    this.clock = clock;
    this.state =
        new LinkState(
            station,
            port,
            State.SEARCHING,
            Phrase.of("link.none", port),
            Optional.empty(),
            Optional.empty(),
            clock.now());
  }

  LinkState state() {
    return state;
  }

  /** Takes out the states since the last call, the newest last. */
  List<LinkState> takeChanges() {
    List<LinkState> taken = List.copyOf(untold);
    untold.clear();
    return taken;
  }

  void opened(String port, long micros) {
    Instant now = clock.at(micros);
    offlineAt = micros + OFFLINE_AFTER_MICROS;
    change(
        new LinkState(
            state.station(),
            port,
            State.WAITING,
            Phrase.of("link.open", port),
            state.device(),
            Optional.empty(),
            now));
  }

  /** Notes that the board isn't listened to, so that it can't be told whether it beats. */
  void notListening(long micros) {
    offlineAt = Long.MAX_VALUE;
    if (state.state() == State.ONLINE || state.state() == State.WAITING) {
      change(state.with(State.WAITING, Phrase.of("link.deaf"), clock.at(micros)));
    }
  }

  void closed(Phrase why, long micros) {
    offlineAt = Long.MAX_VALUE;
    State next = state.state() == State.SEARCHING ? State.SEARCHING : State.UNPLUGGED;
    change(state.with(next, why, clock.at(micros)));
  }

  void identified(String device) {
    if (!state.device().equals(Optional.of(device))) {
      change(
          new LinkState(
              state.station(),
              state.port(),
              state.state(),
              state.sentence(),
              Optional.of(device),
              state.levels(),
              state.since()));
    }
  }

  void noteBeat(Optional<Levels> levels, long micros) {
    offlineAt = micros + OFFLINE_AFTER_MICROS;
    LinkState next = state.with(State.ONLINE, Phrase.of("link.answers", board()), clock.at(micros));
    change(
        new LinkState(
            next.station(),
            next.port(),
            next.state(),
            next.sentence(),
            next.device(),
            levels,
            next.since()));
  }

  /** The board's name, as far as it is known. */
  private Object board() {
    return state.device().<Object>map(name -> name).orElse(Phrase.of("link.board"));
  }

  void advance(long micros) {
    if (micros >= offlineAt) {
      offlineAt = Long.MAX_VALUE;
      change(state.with(State.OFFLINE, Phrase.of("link.offline", board()), clock.at(micros)));
    }
  }

  long nextLook() {
    return offlineAt;
  }

  private void change(LinkState next) {
    if (!next.equals(state)) {
      state = next;
      untold.add(next);
    }
  }
}
