package castwell.capture.store;

import java.lang.ref.SoftReference;
import java.util.function.Supplier;

/**
 * What was last worked out of the store, by whoever uses this program's connection to it. It is
 * given up where memory is short.
 */
public final class Remembered {
  private SoftReference<Entry> last = new SoftReference<>(null);

  private record Entry(Object of, Object value) {}

  /**
   * @param of all that the value depends on, by its equality
   */
  @SuppressWarnings("unchecked")
  public <T> T value(Object of, Supplier<T> work) {
    Entry entry = entry();
    if (entry == null || !entry.of().equals(of)) {
      entry = new Entry(of, work.get());
      remember(entry);
    }
    return (T) entry.value();
  }

  private synchronized Entry entry() {
    return last.get();
  }

  private synchronized void remember(Entry entry) {
    last = new SoftReference<>(entry);
  }
}
