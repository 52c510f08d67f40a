package castwell.capture.station;

import castwell.capture.wire.Fault;
import castwell.capture.wire.Faults;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.Map;

/**
 * How often each fault happened over the last hours, from counts that are kept every ten minutes.
 * One thread advances it; any thread may read.
 */
public final class RecentFaults {
  private static final long EVERY_MICROS = Duration.ofMinutes(10).toNanos() / 1_000;
  private static final int MOST = 36;

  private final Faults faults;
  private final Deque<Snapshot> snapshots = new ArrayDeque<>();
  private long nowMicros;

  private record Snapshot(long micros, Map<Fault, Long> counts) {}

  RecentFaults(Faults faults) {
    this.faults = faults;
  }

  synchronized void advance(long micros) {
    nowMicros = micros;
    if (snapshots.isEmpty() || micros >= snapshots.getLast().micros() + EVERY_MICROS) {
      // Faults before the first snapshot count as recent, so it begins at 0.
      snapshots.addLast(new Snapshot(micros, snapshots.isEmpty() ? Map.of() : faults.all()));
      if (snapshots.size() > MOST) {
        snapshots.removeFirst();
      }
    }
  }

  /** The counts since the start, and since the oldest snapshot that is kept. */
  public synchronized FaultCounts counts() {
    Map<Fault, Long> all = faults.all();
    Map<Fault, Long> recent = new EnumMap<>(Fault.class);
    all.forEach((fault, count) -> recent.put(fault, count - before(fault)));
    recent.values().removeIf(count -> count == 0);
    long sinceMicros = snapshots.isEmpty() ? nowMicros : snapshots.getFirst().micros();
    return new FaultCounts(all, recent, Duration.ofNanos((nowMicros - sinceMicros) * 1_000));
  }

  private long before(Fault fault) {
    return snapshots.isEmpty() ? 0 : snapshots.getFirst().counts().getOrDefault(fault, 0L);
  }
}
