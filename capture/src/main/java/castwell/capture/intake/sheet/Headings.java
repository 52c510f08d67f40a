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
 * SheetKind stands in which column.
 *
 * @param columns how many there are
 * @param places by the field's name
 * @param notRead headings that aren't ours, each with what it may be a slip for
 */
public record Headings(int columns, Map<String, Place> places, List<String> notRead) {

  /**
   * @param column from 0
   * @param heading as the file writes it
   * @param unit how many SI units its numbers count
   */
  record Place(int column, String heading, double unit) {}

  /** A heading of ours: the field that stands under it, and its unit. */
  private record Ours(SheetColumn field, double unit) {}

  /**
   * @param map the file's headings to ours, where they differ
   * @throws SheetRefused when columns are missing or contradict each other
   */
  static Headings of(String source, SheetKind what, List<String> cells, Map<String, String> map) {
    Map<String, Ours> ours = ours(what);
    Map<String, String> meant = meant(source, cells, map, ours);
    Map<String, Place> places = new LinkedHashMap<>();
    List<String> notRead = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      String plain = plain(cells.get(i));
      String name = meant.getOrDefault(plain, plain);
      Optional<Ours> known = Optional.ofNullable(ours.get(name));
      if (known.isPresent()) {
        SheetColumn field = known.get().field();
        Place before = places.put(field.name(), new Place(i, cells.get(i), known.get().unit()));
        if (before != null) {
          throw new SheetRefused("sheet.two_columns", source, before.heading(), cells.get(i));
        }
      } else if (!name.isEmpty() && !what.passedOver().contains(name)) {
        notRead.add(cells.get(i) + hint(name, what, ours));
      }
    }
    refuseMissing(source, what, cells, places);
    return new Headings(cells.size(), places, notRead);
  }

  private static Map<String, Ours> ours(SheetKind what) {
    Map<String, Ours> ours = new HashMap<>();
    for (SheetColumn field : what.fields()) {
      field.headings().forEach((heading, unit) -> ours.put(heading, new Ours(field, unit)));
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

  private static String hint(String name, SheetKind what, Map<String, Ours> ours) {
    Optional<SheetColumn> withoutUnit =
        what.fields().stream()
            .filter(f -> f.units().isPresent() && f.name().equals(name))
            .findFirst();
    return withoutUnit
        .map(field -> " (say its unit: %s)".formatted(field.choice()))
        .or(() -> Nearest.meant(name, ours.keySet()).map(" (%s?)"::formatted))
        .orElse("");
  }

  private static void refuseMissing(
      String source, SheetKind what, List<String> cells, Map<String, Place> places) {
    String missing =
        what.fields().stream()
            .filter(field -> field.needed() && !places.containsKey(field.name()))
            .map(SheetColumn::choice)
            .collect(Collectors.joining("; "));
    if (!missing.isEmpty()) {
      throw new SheetRefused(
          "sheet.lacks",
          source,
          missing,
          String.join(", ", cells),
          what.fields().get(0).usualHeading());
    }
  }

  public static String plain(String heading) {
    return heading.strip().toLowerCase(Locale.ROOT);
  }
}
