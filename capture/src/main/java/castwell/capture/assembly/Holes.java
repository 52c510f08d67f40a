package castwell.capture.assembly;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.TreeSet;

/** Edges that the numbers say exist and that haven't arrived: waited for, then given up. */
final class Holes {
  /**
   * No board keeps more edges than this to send again, and no passage lacks so many: numbers that
   * leap further are not waited for, and not of one object.
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

  /** The board no longer has it. */
  void giveUp(int number) {
    waited.remove(number);
    lost.add(number);
  }

  /** Gives up what has been waited for long enough: the numbers. */
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

  /** Those waited for in a range, both ends included. */
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

  /** Holes from a number on, ascending. */
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
