package castwell.capture.daemon;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * Hop five: tells whoever listens that something was committed. Listeners must return at once; they
 * read the feed for what it was.
 */
public final class Announcer {
  private final List<Listener> listeners = new CopyOnWriteArrayList<>();

  /** Called by the thread that committed. */
  public interface Listener {

    void fedMore();

    void linkChanged(LinkState state);

    /** What is committed meanwhile waits in memory, or doesn't any more. */
    void storeChanged(StoreState state);
  }

  public void add(Listener listener) {
    listeners.add(listener);
  }

  void fedMore() {
    listeners.forEach(Listener::fedMore);
  }

  void storeChanged(StoreState state) {
    listeners.forEach(listener -> listener.storeChanged(state));
  }

  void linkChanged(LinkState state) {
    listeners.forEach(listener -> listener.linkChanged(state));
  }
}
