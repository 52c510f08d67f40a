package castwell.capture.intake.sheet;

import castwell.capture.word.Nearest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The places of our columns in a file.
 *
 * @param columns how many columns the file has
 * @param places by our column's name
 * @param notRead headings that aren't ours, each with what it may be a slip for
 */
public record Headings(int columns, Map<String, Place> places, List<String> notRead) {

  /**
   * @param column counted from 0
   * @param heading as the file writes it
   * @param unit the value of its unit in SI units
   */
  record Place(int column, String heading, double unit) {}

  /** One of our headings: the column that it stands over, and the SI value of its unit. */
  private record Ours(SheetColumn column, double unit) {}

  /**
   * @param map the file's headings to ours, where they differ
   * @throws SheetRefused when columns are missing or contradict each other
   */
  static Headings of(String source, SheetKind kind, List<String> cells, Map<String, String> map) {
    Map<String, Ours> ours = ours(kind);
    Map<String, String> meant = meant(source, cells, map, ours);
    Map<String, Place> places = new LinkedHashMap<>();
    List<String> notRead = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      String plain = plain(cells.get(i));
      String name = meant.getOrDefault(plain, plain);
      Optional<Ours> known = Optional.ofNullable(ours.get(name));
      if (known.isPresent()) {
        SheetColumn column = known.get().column();
        Place before = places.put(column.name(), new Place(i, cells.get(i), known.get().unit()));
        if (before != null) {
          throw new SheetRefused("sheet.two_columns", source, before.heading(), cells.get(i));
        }
      } else if (!name.isEmpty() && !kind.passedOver().contains(name)) {
        notRead.add(cells.get(i) + hint(name, kind, ours));
      }
    }
    refuseMissing(source, kind, cells, places);
    return new Headings(cells.size(), places, notRead);
  }

  private static Map<String, Ours> ours(SheetKind kind) {
    Map<String, Ours> ours = new HashMap<>();
    for (SheetColumn column : kind.columns()) {
      column.headings().forEach((heading, unit) -> ours.put(heading, new Ours(column, unit)));
    }
    return ours;
  }

  private static Map<String, String> meant(
      String source, List<String> cells, Map<String, String> map, Map<String, Ours> ours) {
    Map<String, String> meant = new HashMap<>();
    List<String> there = cells.stream().map(Headings::plain).toList();
    map.forEach(
        (theirs, our) -> {
          if (!there.contains(plain(theirs))) {
            throw new SheetRefused(
                "sheet.no_heading", source, theirs, our, String.join(", ", cells));
          }
          if (!ours.containsKey(plain(our))) {
            throw new SheetRefused("sheet.no_column", our, theirs, Nearest.of(our, ours.keySet()));
          }
          meant.put(plain(theirs), plain(our));
        });
    return meant;
  }

  private static String hint(String name, SheetKind kind, Map<String, Ours> ours) {
    Optional<SheetColumn> withoutUnit =
        kind.columns().stream()
            .filter(f -> f.units().isPresent() && f.name().equals(name))
            .findFirst();
    return withoutUnit
        .map(column -> " (say its unit: %s)".formatted(column.choice()))
        .or(() -> Nearest.meant(name, ours.keySet()).map(" (%s?)"::formatted))
        .orElse("");
  }

  private static void refuseMissing(
      String source, SheetKind kind, List<String> cells, Map<String, Place> places) {
    String missing =
        kind.columns().stream()
            .filter(column -> column.needed() && !places.containsKey(column.name()))
            .map(SheetColumn::choice)
            .collect(Collectors.joining("; "));
    if (!missing.isEmpty()) {
      throw new SheetRefused(
          "sheet.lacks",
          source,
          missing,
          String.join(", ", cells),
          kind.columns().get(0).usualHeading());
    }
  }

  public static String plain(String heading) {
    return heading.strip().toLowerCase(Locale.ROOT);
  }
}
