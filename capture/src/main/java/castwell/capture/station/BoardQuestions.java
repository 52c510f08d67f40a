package castwell.capture.station;

import castwell.capture.clock.Backoff;
import castwell.capture.device.Link;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;

/** Asks the board who it is, and for edges once more. A recording answers nothing. */
final class BoardQuestions {
  /**
   * The time after which a request is repeated: half of that for which a hole is waited for, so
   * that a lost request gets a second chance.
   */
  private static final long REPEAT_MICROS = 150_000;

  private Optional<Link> link = Optional.empty();
  private boolean identityHeard;
  private final Backoff identityBackoff =
      new Backoff(Duration.ofSeconds(1), 2, Duration.ofSeconds(5));
  private long nextIdentityAsk = Long.MAX_VALUE;
  private int askedFrom;
  private long askedMicros;

  void opened(Link opened, long micros) {
    link = Optional.of(opened);
    identityHeard = false;
    identityBackoff.reset();
    askedFrom = 0;
    askIdentity(micros);
  }

  void closed() {
    link = Optional.empty();
    nextIdentityAsk = Long.MAX_VALUE;
  }

  /**
   * Notes that the board said who it is.
   *
   * @return whether that is its first answer over this link
   */
  boolean noteIdentity() {
    boolean first = !identityHeard;
    identityHeard = true;
    nextIdentityAsk = Long.MAX_VALUE;
    return first;
  }

  void askIdentity(long micros) {
    say("?");
    nextIdentityAsk = micros + TimeUnit.MICROSECONDS.convert(identityBackoff.next());
  }

  void askEdges(int boot, int from, long micros) {
    say("R," + boot + "," + from);
    askedFrom = from;
    askedMicros = micros;
  }

  /** Asks for the edges from a hole on, unless that was just done. */
  void fill(int boot, OptionalInt hole, long micros) {
    if (hole.isPresent()
        && (hole.getAsInt() != askedFrom || micros - askedMicros >= REPEAT_MICROS)) {
      askEdges(boot, hole.getAsInt(), micros);
    }
  }

  void advance(long micros) {
    if (micros >= nextIdentityAsk) {
      askIdentity(micros);
    }
  }

  long nextLook() {
    return nextIdentityAsk;
  }

  private void say(String words) {
    if (link.isPresent()) {
      try {
        link.get().write((words + "\n").getBytes(StandardCharsets.US_ASCII));
      } catch (IOException e) {
        // The reader notices the lost link by itself, and everything is asked again over the next.
      }
    }
  }
}
