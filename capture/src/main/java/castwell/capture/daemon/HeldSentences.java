package castwell.capture.daemon;

import castwell.capture.wire.Sentence;
import castwell.capture.wire.Sentence.EdgeSeen;
import castwell.capture.wire.Sentence.Heartbeat;
import java.util.ArrayList;
import java.util.List;

/**
 * Sentences that came before the host could make sense of them: before the board said who it is, or
 * edges before the first heartbeat over this link, which unwraps their ticks.
 */
final class HeldSentences {
  private static final long BEAT_WAIT_MICROS = 1_500_000;
  private static final int MOST = 4096;

  private final List<Held> held = new ArrayList<>();
  private boolean beatHeard;
  private long waitUntil = BEAT_WAIT_MICROS;

  record Held(Sentence sentence, long micros) {}

  void opened(long micros) {
    beatHeard = false;
    waitUntil = micros + BEAT_WAIT_MICROS;
  }

  /** Whether an edge should wait for the first beat. */
  boolean mustHold(Sentence sentence, long micros) {
    return sentence instanceof EdgeSeen && !beatHeard && micros < waitUntil;
  }

  /** The oldest go first when there are too many. */
  void hold(Sentence sentence, long micros) {
    held.add(new Held(sentence, micros));
    if (held.size() > MOST) {
      held.remove(0);
    }
  }

  void beatHeard() {
    beatHeard = true;
  }

  boolean isEmpty() {
    return held.isEmpty();
  }

  boolean isDue(long micros) {
    return !held.isEmpty() && (beatHeard || micros >= waitUntil);
  }

  long nextLook() {
    return held.isEmpty() ? Long.MAX_VALUE : waitUntil;
  }

  /** The boot that they tell of; 0 where none does. */
  int boot() {
    for (Held h : held) {
      if (h.sentence() instanceof EdgeSeen edge) {
        return edge.boot();
      }
    }
    return 0;
  }

  /** Heartbeats first, since they unwrap the edges. */
  List<Held> takeAll() {
    List<Held> taken = new ArrayList<>(held);
    taken.sort(
        (a, b) ->
            Boolean.compare(b.sentence() instanceof Heartbeat, a.sentence() instanceof Heartbeat));
    held.clear();
    return taken;
  }
}
