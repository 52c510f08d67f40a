package castwell.capture.announce;

import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
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

    /** A board beat. Nothing is derived from that, so it is told before it is stored. */
    default void beatHeard(String station, HeardBeat beat) {}
  }

  public void add(Listener listener) {
    listeners.add(listener);
  }

  public void fedMore() {
    listeners.forEach(Listener::fedMore);
  }

  public void storeChanged(StoreState state) {
    listeners.forEach(listener -> listener.storeChanged(state));
  }

  public void beatHeard(String station, HeardBeat beat) {
    listeners.forEach(listener -> listener.beatHeard(station, beat));
  }

  public void linkChanged(LinkState state) {
    listeners.forEach(listener -> listener.linkChanged(state));
  }
}
