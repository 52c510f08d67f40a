package castwell.capture.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The edges that must exist by their numbers but haven't arrived: they are waited for, then given
 * up.
 */
final class Holes {
  /**
   * The most missing edges in a row to wait for. No board keeps more to send again, and no passage
   * lacks so many; edges whose numbers leap further aren't of one object.
   */
  static final int MOST_IN_A_ROW = 256;

  private final TreeMap<Integer, Long> waited = new TreeMap<>();
  private final TreeSet<Integer> lost = new TreeSet<>();

  /** Whether numbers leap too far from one edge to another for both to be of one object. */
  static boolean isLeap(int before, int after) {
    return after - before > MOST_IN_A_ROW;
  }

  void open(int number, long giveUpMicros) {
    waited.put(number, giveUpMicros);
  }

  /**
   * @return whether it was a hole, open or given up
   */
  boolean fill(int number) {
    return waited.remove(number) != null | lost.remove(number);
  }

  /** Gives an edge up, since it will not come any more. */
  void giveUp(int number) {
    waited.remove(number);
    lost.add(number);
  }

  /** Gives up the edges that were waited for long enough, and returns their numbers. */
  List<Integer> expire(long micros) {
    List<Integer> expired = new ArrayList<>();
    waited.forEach(
        (number, giveUp) -> {
          if (giveUp <= micros) {
            expired.add(number);
          }
        });
    expired.forEach(this::giveUp);
    return expired;
  }

  /** The edges of a range that are waited for, both ends included. */
  List<Integer> waitedFor(int first, int last) {
    return List.copyOf(waited.subMap(first, true, last, true).keySet());
  }

  boolean isWaitedFor(int number) {
    return waited.containsKey(number);
  }

  OptionalInt firstWaitedFor() {
    return waited.isEmpty() ? OptionalInt.empty() : OptionalInt.of(waited.firstKey());
  }

  OptionalLong nextGiveUp() {
    return waited.values().stream().mapToLong(Long::longValue).min();
  }

  /** The holes from a number on, ascending, waited for or given up. */
  List<Integer> from(int number) {
    TreeSet<Integer> all = new TreeSet<>(lost.tailSet(number));
    all.addAll(waited.tailMap(number).keySet());
    return List.copyOf(all);
  }

  void forgetBefore(int number) {
    waited.headMap(number).clear();
    lost.headSet(number).clear();
  }
}
