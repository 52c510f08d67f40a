package castwell.capture.daemon;

import castwell.capture.daemon.LinkState.State;
import castwell.capture.wire.Sentence.Levels;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;

/** Keeps a station's {@link LinkState} and tells when it changes. */
final class LinkWatch {
  static final long OFFLINE_AFTER_MICROS = 3_000_000;

  private final HostClock clock;
  private final Consumer<LinkState> listener;
  private volatile LinkState state;
  private long offlineAt = Long.MAX_VALUE;

  LinkWatch(String station, String port, HostClock clock, Consumer<LinkState> listener) {
    this.clock = clock;
    this.listener = listener;
    this.state =
        new LinkState(
            station,
            port,
            State.SEARCHING,
            "No board found yet (" + port + "): plug it in.",
            Optional.empty(),
            Optional.empty(),
            clock.now());
  }

  LinkState state() {
    return state;
  }

  void opened(String port, long micros) {
    Instant now = clock.at(micros);
    offlineAt = micros + OFFLINE_AFTER_MICROS;
    change(
        new LinkState(
            state.station(),
            port,
            State.WAITING,
            port + " is open; waiting for the board's heartbeat.",
            state.device(),
            Optional.empty(),
            now));
  }

  /** Whether it beats can't be told. */
  void notListening(long micros) {
    offlineAt = Long.MAX_VALUE;
    if (state.state() == State.ONLINE || state.state() == State.WAITING) {
      String sentence = "The board isn't listened to until what waits is on the disk.";
      change(state.with(State.WAITING, sentence, clock.at(micros)));
    }
  }

  void closed(String sentence, long micros) {
    offlineAt = Long.MAX_VALUE;
    State next = state.state() == State.SEARCHING ? State.SEARCHING : State.UNPLUGGED;
    change(state.with(next, sentence, clock.at(micros)));
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

  void beat(Optional<Levels> levels, long micros) {
    offlineAt = micros + OFFLINE_AFTER_MICROS;
    String device = state.device().orElse("The board");
    LinkState next = state.with(State.ONLINE, device + " answers.", clock.at(micros));
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

  void advance(long micros) {
    if (micros >= offlineAt) {
      offlineAt = Long.MAX_VALUE;
      String device = state.device().orElse("The board");
      change(
          state.with(
              State.OFFLINE,
              device + " is offline: no heartbeat for 3 s. Check its cable.",
              clock.at(micros)));
    }
  }

  long nextLook() {
    return offlineAt;
  }

  private void change(LinkState next) {
    if (!next.equals(state)) {
      state = next;
      listener.accept(next);
    }
  }
}
