package castwell.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Times of pages over stores with so many shots ({@code -Dcastwell.shots=}), as a table. */
final class OverShots {
  private final List<Integer> sizes =
      Stream.of(System.getProperty("castwell.shots", "0 1000").split(" "))
          .map(Integer::valueOf)
          .toList();
  private final Map<String, List<Double>> rows = new LinkedHashMap<>();

  List<Integer> sizes() {
    return sizes;
  }

  /** Size by size, in their order. */
  void note(String page, double ms) {
    rows.computeIfAbsent(page, p -> new ArrayList<>()).add(ms);
  }

  /**
   * @param format of milliseconds
   */
  void print(String format) {
    line("page", sizes.stream().map(n -> n + " shots").toList());
    System.out.println("|---" + "|---:".repeat(sizes.size()) + "|");
    rows.forEach((page, times) -> line(page, times.stream().map(format::formatted).toList()));
  }

  private static void line(String first, List<String> rest) {
    System.out.println("| " + first + " | " + String.join(" | ", rest) + " |");
  }
}
