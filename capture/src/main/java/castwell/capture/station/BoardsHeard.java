package castwell.capture.station;

import java.util.HashMap;
import java.util.Map;

/**
 * Which board each station hears now: what two stations hear at once are two boards, whatever name
 * they bear. Used by one thread.
 */
public final class BoardsHeard {
  /** Boards beat every second; one that is silent for longer may have been taken elsewhere. */
  private static final long SILENT_MICROS = 2_000_000;

  private final Map<String, Heard> stations = new HashMap<>();

  private record Heard(long board, long micros) {}

  void hears(String station, long board, long micros) {
    stations.put(station, new Heard(board, micros));
  }

  /** Its link is gone. */
  void leaves(String station) {
    stations.remove(station);
  }

  boolean isElsewhere(String station, long board, long micros) {
    return stations.entrySet().stream()
        .filter(entry -> !entry.getKey().equals(station))
        .map(Map.Entry::getValue)
        .anyMatch(heard -> heard.board == board && micros - heard.micros < SILENT_MICROS);
  }
}
