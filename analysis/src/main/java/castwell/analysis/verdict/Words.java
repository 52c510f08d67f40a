package castwell.analysis.verdict;

import castwell.analysis.unit.Units;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Figures as a bowyer reads them. */
final class Words {
  private static final int NAMED_AT_MOST = 6;

  private Words() {}

  static String speed(double mps) {
    return String.format(Locale.ROOT, "%.1f ft/s", mps / Units.METRES_PER_FOOT);
  }

  static String length(double metres) {
    return String.format(
        Locale.ROOT, "%.0f mm (%.1f in)", metres * 1000, metres / Units.METRES_PER_INCH);
  }

  /** "edge 5", "edges 5, 6 and 9", "12 edges from 5 to 40". */
  static String edges(List<Integer> numbers) {
    int last = numbers.get(numbers.size() - 1);
    if (numbers.size() == 1) {
      return "edge " + last;
    }
    if (numbers.size() > NAMED_AT_MOST) {
      return numbers.size() + " edges from " + numbers.get(0) + " to " + last;
    }
    return numbers.subList(0, numbers.size() - 1).stream()
        .map(String::valueOf)
        .collect(Collectors.joining(", ", "edges ", " and " + last));
  }
}
