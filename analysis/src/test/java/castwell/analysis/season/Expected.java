package castwell.analysis.season;

import castwell.analysis.unit.Units;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Seasons under resources/season, and what an independent program in R reckoned of them. */
final class Expected {
  private static final Map<String, Double> VALUES = new HashMap<>();

  static {
    for (String[] row : rows("expected.csv")) {
      VALUES.put(String.join(",", row[0], row[1], row[2], row[3]), Double.parseDouble(row[4]));
    }
  }

  private final String season;

  Expected(String season) {
    this.season = season;
  }

  double of(String what, String of, String name) {
    Double value = VALUES.get(String.join(",", season, what, of, name));
    if (value == null) {
      throw new IllegalArgumentException(season + " has no " + what + " " + of + " " + name);
    }
    return value;
  }

  /** Without the heading. */
  static List<String[]> rows(String file) {
    try (InputStream in = Expected.class.getResourceAsStream("/season/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.split(","))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  List<SeasonCell> cells() {
    return rows(season + ".csv").stream().map(Expected::cell).toList();
  }

  private static SeasonCell cell(String... row) {
    return new SeasonCell(
        row[0],
        row[1],
        row[2],
        row[0],
        Double.parseDouble(row[3]) * Units.KILOGRAMS_PER_GRAIN,
        Double.parseDouble(row[4]) * Units.KILOGRAMS_PER_GRAIN,
        row[5],
        Double.parseDouble(row[6]),
        Integer.parseInt(row[7]),
        Double.parseDouble(row[8]),
        Double.parseDouble(row[9]));
  }
}
