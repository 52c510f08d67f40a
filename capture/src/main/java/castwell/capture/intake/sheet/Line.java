package castwell.capture.intake.sheet;

import castwell.capture.intake.sheet.Headings.Place;
import castwell.capture.word.When;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * One line of a sheet, read column by column. A value that can't be read is refused with a
 * sentence.
 */
public final class Line {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");

  private final int number;
  private final List<String> cells;
  private final Headings headings;
  private final boolean decimalComma;

  Line(CsvText.Row row, Headings headings, boolean decimalComma) {
    this.number = row.line();
    this.cells = row.cells();
    this.headings = headings;
    this.decimalComma = decimalComma;
  }

  /** The line's number in the file. */
  public int number() {
    return number;
  }

  /**
   * Refuses a line with more cells than headings: a comma too many moves everything behind it one
   * column on.
   */
  public void refuseTooMany() {
    if (cells.stream().skip(headings.columns()).anyMatch(cell -> !cell.isEmpty())) {
      throw new CantRead("sheet.too_many_cells", cells.size(), headings.columns());
    }
  }

  /** A column's text; empty where there is no such column, or nothing in it. */
  public Optional<String> words(String column) {
    return Optional.ofNullable(headings.places().get(column))
        .filter(place -> place.column() < cells.size())
        .map(place -> cells.get(place.column()))
        .filter(cell -> !cell.isEmpty());
  }

  public String neededWords(String column) {
    return words(column).orElseThrow(() -> new CantRead("sheet.empty_cell", heading(column)));
  }

  /**
   * @param zone the time zone of a date that names none
   */
  public Optional<When> when(String column, ZoneId zone) {
    return words(column)
        .map(
            text ->
                When.parse(text, zone)
                    .orElseThrow(() -> new CantRead("sheet.no_date", named(column))));
  }

  /** A column's number in SI units; empty where there is no such column, or nothing in it. */
  public OptionalDouble number(String column) {
    Optional<String> cell = words(column);
    return cell.isPresent()
        ? OptionalDouble.of(si(headings.places().get(column), cell.get()))
        : OptionalDouble.empty();
  }

  public OptionalDouble number(String column, OptionalDouble otherwise) {
    OptionalDouble told = number(column);
    return told.isPresent() ? told : otherwise;
  }

  public double neededNumber(String column) {
    return number(column).orElseThrow(() -> new CantRead("sheet.empty_cell", heading(column)));
  }

  private double si(Place place, String cell) {
    String plain = decimalComma ? cell.replace(',', '.') : cell;
    double value = NUMBER.matcher(plain).matches() ? Double.parseDouble(plain) : Double.NaN;
    if (!Double.isFinite(value)) {
      throw new CantRead(
          "sheet.no_number", place.heading(), cell, decimalComma ? "152,3" : "152.3");
    }
    return value * place.unit();
  }

  /** A column's heading with what this line has in it, as sentences quote them. */
  public String named(String column) {
    return "%s \"%s\"".formatted(heading(column), words(column).orElse(""));
  }

  private String heading(String column) {
    return Optional.ofNullable(headings.places().get(column)).map(Place::heading).orElse(column);
  }
}
