package castwell.capture.station;

import castwell.capture.wire.Sentence;
import castwell.capture.wire.Sentence.EdgeSeen;
import castwell.capture.wire.Sentence.Heartbeat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * Sentences that came before the host could make sense of them: those before the board said who it
 * is, and edges before the first heartbeat over this link, which unwraps their ticks.
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

  /** Whether a sentence is an edge that should wait for the first beat. */
  boolean mustHold(Sentence sentence, long micros) {
    return sentence instanceof EdgeSeen && !beatHeard && micros < waitUntil;
  }

  /** Holds a sentence; when there are too many, the oldest is dropped. */
  void hold(Sentence sentence, long micros) {
    held.add(new Held(sentence, micros));
    if (held.size() > MOST) {
      held.remove(0);
    }
  }

  void noteBeat() {
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

  /** The boot of the first held sentence; empty where none is held. */
  OptionalInt firstBoot() {
    return held.stream().mapToInt(h -> h.sentence().boot()).findFirst();
  }

  /** Takes all out, boot by boot, each boot's heartbeats first, since they unwrap its edges. */
  List<Held> takeAll() {
    Map<Integer, List<Held>> boots = new LinkedHashMap<>();
    held.forEach(h -> boots.computeIfAbsent(h.sentence().boot(), b -> new ArrayList<>()).add(h));
    held.clear();
    return boots.values().stream()
        .flatMap(boot -> boot.stream().sorted(Comparator.comparing(h -> !isBeat(h))))
        .toList();
  }

  private static boolean isBeat(Held held) {
    return held.sentence() instanceof Heartbeat;
  }
}
