package castwell.capture.intake.sheet;

import castwell.capture.measure.Measure;
import castwell.capture.measure.UnitFamily;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Something that a sheet may give in a column of its own.
 *
 * @param units of its numbers; empty for words, dates and counts
 * @param usualUnit the unit in which this project writes it; empty without units
 * @param needed whether a sheet without it is refused
 */
public record SheetColumn(
    String name, Optional<UnitFamily> units, String usualUnit, boolean needed) {

  static SheetColumn words(String name) {
    return new SheetColumn(name, Optional.empty(), "", false);
  }

  static SheetColumn measured(String name, UnitFamily units, String usualUnit) {
    return new SheetColumn(name, Optional.of(units), usualUnit, false);
  }

  static SheetColumn of(Measure measure) {
    return measure
        .number()
        .map(number -> number.scale())
        .map(scale -> measured(measure.stem(), scale.family(), scale.ending()))
        .orElseGet(() -> words(measure.stem()));
  }

  SheetColumn must() {
    return new SheetColumn(name, units, usualUnit, true);
  }

  /**
   * The headings that it may stand under, each with the SI value of its unit; the usual one comes
   * first.
   */
  public Map<String, Double> headings() {
    Map<String, Double> headings = new LinkedHashMap<>();
    headings.put(usualHeading(), 1.0);
    units.ifPresent(
        family -> family.units().forEach((unit, si) -> headings.put(name + "_" + unit, si)));
    return headings;
  }

  public String usualHeading() {
    return units.isEmpty() ? name : name + "_" + usualUnit;
  }

  /** The possible headings in words: "speed_fps, speed_mps, speed_kmh or speed_mph". */
  String choice() {
    List<String> all = List.copyOf(headings().keySet());
    int last = all.size() - 1;
    return last == 0
        ? all.get(0)
        : all.stream().limit(last).collect(Collectors.joining(", ")) + " or " + all.get(last);
  }
}
