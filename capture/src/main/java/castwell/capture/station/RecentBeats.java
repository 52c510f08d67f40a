package castwell.capture.station;

import castwell.capture.store.HeardBeat;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/** The last five minutes' heartbeats over one link. One thread adds them; any thread may read. */
public final class RecentBeats {
  private static final int MOST = 300;

  private final Deque<HeardBeat> beats = new ArrayDeque<>();

  synchronized void add(HeardBeat beat) {
    beats.addLast(beat);
    if (beats.size() > MOST) {
      beats.removeFirst();
    }
  }

  synchronized void forget() {
    beats.clear();
  }

  /** The heartbeats, the oldest first. */
  public synchronized List<HeardBeat> all() {
    return List.copyOf(beats);
  }
}
