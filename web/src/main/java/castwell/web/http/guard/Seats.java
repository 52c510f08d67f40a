package castwell.web.http.guard;

import java.util.HashMap;
import java.util.Map;

/** How many are in at once, in all and from one address. */
public final class Seats {
  private final int most;
  private final int mostOfOne;
  private final Map<String, Integer> byAddress = new HashMap<>();
  private int taken;

  /** What became of asking for one. */
  public enum Outcome {
    TAKEN,
    ALL_TAKEN,
    TOO_MANY_OF_ONE
  }

  public Seats(int most, int mostOfOne) {
    this.most = most;
    this.mostOfOne = mostOfOne;
  }

  public synchronized Outcome take(String address) {
    if (taken >= most) {
      return Outcome.ALL_TAKEN;
    }
    if (byAddress.getOrDefault(address, 0) >= mostOfOne) {
      return Outcome.TOO_MANY_OF_ONE;
    }
    byAddress.merge(address, 1, Integer::sum);
    taken++;
    return Outcome.TAKEN;
  }

  /** Called once for each that was taken. */
  public synchronized void leave(String address) {
    byAddress.computeIfPresent(address, (a, n) -> n == 1 ? null : n - 1);
    taken--;
  }
}
