package castwell.capture.announce;

import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * Tells whoever listens that something was committed, hop five. Listeners must return at once; they
 * read the feed for what it was.
 */
public final class Announcer {
  private final List<Listener> listeners = new CopyOnWriteArrayList<>();

  /** Someone who is told after a commit, by the thread that committed. */
  public interface Listener {

    /** There is more to read in the feed. */
    void fedMore();

    /** How things stand between a station and its board changed. */
    void linkChanged(LinkState state);

    /** What comes from a station now waits in memory, or doesn't any more. */
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
