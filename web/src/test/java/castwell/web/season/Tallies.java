package castwell.web.season;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Counts how often what was told is so, by column and row. */
final class Tallies {
  private static final double SELDOM = 1e-3;

  private final Map<String, Map<String, Share>> rows = new TreeMap<>();
  private final Map<String, Integer> columns = new LinkedHashMap<>();

  /** So many of all. */
  static final class Share {
    private int some;
    private int all;

    int some() {
      return some;
    }

    int all() {
      return all;
    }

    double share() {
      return (double) some / all;
    }

    /** Whether so few would come by chance once in a thousand times at most, if each had p. */
    boolean isBelow(double p) {
      return atMost(some, p) < SELDOM;
    }

    /** Whether so many would. */
    boolean isAbove(double p) {
      return 1 - atMost(some - 1, p) < SELDOM;
    }

    /** The binomial distribution. */
    private double atMost(int most, double p) {
      double sum = 0;
      double log = all * Math.log1p(-p);
      for (int k = 0; k <= most; k++) {
        sum += Math.exp(log);
        log += Math.log((all - k) / (k + 1.0) * p / (1 - p));
      }
      return sum;
    }
  }

  void add(List<String> toRows, String column, boolean is) {
    columns.merge(column, 1, Integer::sum);
    for (String row : toRows) {
      Share share =
          rows.computeIfAbsent(row, r -> new LinkedHashMap<>())
              .computeIfAbsent(column, c -> new Share());
      share.some += is ? 1 : 0;
      share.all++;
    }
  }

  Share of(String row, String column) {
    return rows.getOrDefault(row, Map.of()).getOrDefault(column, new Share());
  }

  /** As lines of a Markdown table: per cent, and of how many. */
  String table() {
    StringBuilder table = new StringBuilder("| |");
    columns.keySet().forEach(column -> table.append(' ').append(column).append(" |"));
    table.append("\n|---|").append("---|".repeat(columns.size())).append('\n');
    rows.forEach(
        (row, shares) ->
            table.append(
                columns.keySet().stream()
                    .map(column -> cell(Optional.ofNullable(shares.get(column))))
                    .collect(Collectors.joining(" | ", "| " + row + " | ", " |\n"))));
    return table.toString();
  }

  private static String cell(Optional<Share> share) {
    return share
        .map(s -> String.format(Locale.ROOT, "%.1f (%d)", 100 * s.share(), s.all))
        .orElse("");
  }
}
