package castwell.capture.station;

import castwell.analysis.wording.Phrase;
import castwell.capture.wire.Sentence.Levels;
import java.time.Instant;
import java.util.Optional;

/**
 * How things stand between a station and its board.
 *
 * @param port where the board is, or where it is looked for
 * @param sentence the state in words
 * @param device the board's name, once it has told it
 * @param levels whether each gate is blocked now
 * @param since when this state began
 */
public record LinkState(
    String station,
    String port,
    State state,
    Phrase sentence,
    Optional<String> device,
    Optional<Levels> levels,
    Instant since) {

  public enum State {
    /** No board was found yet. */
    SEARCHING,
    /** A port is open and nothing was heard yet. */
    WAITING,
    /** The board beats. */
    ONLINE,
    /** The port is open and the board has stopped beating. */
    OFFLINE,
    /** The port is gone; it is opened again when it returns. */
    UNPLUGGED
  }

  LinkState with(State next, Phrase words, Instant now) {
    Instant began = next == state ? since : now;
    Optional<Levels> seen = next == State.ONLINE ? levels : Optional.empty();
    return new LinkState(station, port, next, words, device, seen, began);
  }
}
