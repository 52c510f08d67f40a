package castwell.capture.station;

import java.util.HashMap;
import java.util.Map;

/**
 * Which board each station hears now. Two stations that hear something at once hear two boards,
 * even if these bear one name. One thread uses this.
 */
public final class BoardsHeard {
  /**
   * The silence after which a board may have been taken elsewhere, since boards beat every second.
   */
  private static final long SILENT_MICROS = 2_000_000;

  private final Map<String, Heard> stations = new HashMap<>();

  private record Heard(long board, long micros) {}

  void note(String station, long board, long micros) {
    stations.put(station, new Heard(board, micros));
  }

  /** Forgets what a station heard, since its link is gone. */
  void forget(String station) {
    stations.remove(station);
  }

  boolean isElsewhere(String station, long board, long micros) {
    return stations.entrySet().stream()
        .filter(entry -> !entry.getKey().equals(station))
        .map(Map.Entry::getValue)
        .anyMatch(heard -> heard.board == board && micros - heard.micros < SILENT_MICROS);
  }
}
