package castwell.capture.station;

import castwell.capture.wire.Fault;
import castwell.capture.wire.Faults;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.Map;

/**
 * How often each fault happened over the last hours: the counts as they stood every ten minutes are
 * kept. Looked after by one thread, read by any.
 */
public final class RecentFaults {
  private static final long EVERY_MICROS = Duration.ofMinutes(10).toNanos() / 1_000;
  private static final int MOST = 36;

  private final Faults faults;
  private final Deque<Stand> stands = new ArrayDeque<>();
  private long nowMicros;

  private record Stand(long micros, Map<Fault, Long> counts) {}

  RecentFaults(Faults faults) {
    this.faults = faults;
  }

  synchronized void advance(long micros) {
    nowMicros = micros;
    if (stands.isEmpty() || micros >= stands.getLast().micros() + EVERY_MICROS) {
      // Before the first look there were none.
      stands.addLast(new Stand(micros, stands.isEmpty() ? Map.of() : faults.all()));
      if (stands.size() > MOST) {
        stands.removeFirst();
      }
    }
  }

  /** The recent ones are those since the oldest kept count. */
  public synchronized FaultCounts counts() {
    Map<Fault, Long> all = faults.all();
    Map<Fault, Long> recent = new EnumMap<>(Fault.class);
    all.forEach((fault, count) -> recent.put(fault, count - before(fault)));
    recent.values().removeIf(count -> count == 0);
    long sinceMicros = stands.isEmpty() ? nowMicros : stands.getFirst().micros();
    return new FaultCounts(all, recent, Duration.ofNanos((nowMicros - sinceMicros) * 1_000));
  }

  private long before(Fault fault) {
    return stands.isEmpty() ? 0 : stands.getFirst().counts().getOrDefault(fault, 0L);
  }
}
