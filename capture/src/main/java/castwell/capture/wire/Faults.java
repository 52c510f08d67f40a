package castwell.capture.wire;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/** How often each fault happened. One thread counts; any thread may read. */
public final class Faults {
  private final Map<Fault, Long> counts = Collections.synchronizedMap(new EnumMap<>(Fault.class));

  public void count(Fault fault) {
    count(fault, 1);
  }

  public void count(Fault fault, long howMany) {
    counts.merge(fault, howMany, Long::sum);
  }

  public long of(Fault fault) {
    return counts.getOrDefault(fault, 0L);
  }

  public Map<Fault, Long> all() {
    synchronized (counts) {
      Map<Fault, Long> copy = new EnumMap<>(Fault.class);
      copy.putAll(counts);
      return copy;
    }
  }
}
