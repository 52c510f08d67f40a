package castwell.capture.health;

import castwell.capture.store.HeardBeat;
import castwell.capture.store.StationBeats;
import castwell.capture.store.Store;
import java.time.Clock;
import java.time.Duration;
import java.util.List;

/**
 * A witness where another program captures and can't be asked: it reads what that one stored of
 * late.
 */
public record StoredBeats(Store store, Clock clock) implements Witness {
  private static final int MOST = 300;

  /** Beats are stored every half minute, so after this long without any, none come. */
  private static final Duration LATE = Duration.ofMinutes(2);

  @Override
  public List<HeardBeat> beats(String station) {
    List<HeardBeat> beats = store.read(t -> newest(t.beats(), station));
    boolean isNow =
        !beats.isEmpty() && beats.get(beats.size() - 1).at().isAfter(clock.instant().minus(LATE));
    return isNow ? beats : List.of();
  }

  private static List<HeardBeat> newest(StationBeats beats, String station) {
    return beats.runs(station).stream()
        .findFirst()
        .map(run -> beats.newest(run, MOST))
        .orElse(List.of());
  }
}
