package castwell.capture.rehearsal;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** Watches one gate for more edges than the wire can carry, and counts those that are dropped. */
final class GateFlood {
  private static final int MOST_EDGES = 32;
  private static final double WINDOW_MICROS = 100_000;

  /** How many edges were dropped, with the ticks of the first and the last of them. */
  record Loss(long firstTicks, long lastTicks, int count) {}

  private final Deque<Double> lately = new ArrayDeque<>();
  private Optional<Loss> loss = Optional.empty();
  private double reportMicros = Double.POSITIVE_INFINITY;

  /**
   * Takes in an edge, and counts it as dropped where it is one too many.
   *
   * @return whether it was dropped
   */
  boolean dropIfTooMany(double micros, long ticks) {
    lately.add(micros);
    while (lately.peek() < micros - WINDOW_MICROS) {
      lately.remove();
    }
    if (lately.size() <= MOST_EDGES) {
      return false;
    }
    if (loss.isEmpty()) {
      reportMicros = micros + WINDOW_MICROS;
    }
    loss =
        Optional.of(
            loss.map(before -> new Loss(before.firstTicks(), ticks, before.count() + 1))
                .orElse(new Loss(ticks, ticks, 1)));
    return true;
  }

  /** When the next report of dropped edges is due; infinity when there is nothing to report. */
  double reportMicros() {
    return reportMicros;
  }

  Optional<Loss> takeLoss() {
    Optional<Loss> told = loss;
    loss = Optional.empty();
    reportMicros = Double.POSITIVE_INFINITY;
    return told;
  }
}
