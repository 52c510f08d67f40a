package castwell.capture.intake.sheet;

import castwell.capture.intake.sheet.Headings.Place;
import castwell.capture.word.When;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** One line of a sheet, read field by field; what can't be read is told. */
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

  /** Its number in the file. */
  public int number() {
    return number;
  }

  /** A comma too many moves everything behind it one column on. */
  public void refuseTooMany() {
    if (cells.stream().skip(headings.columns()).anyMatch(cell -> !cell.isEmpty())) {
      throw new CantRead("sheet.too_many_cells", cells.size(), headings.columns());
    }
  }

  /** Empty where there is no such column, or nothing in it. */
  public Optional<String> words(String field) {
    return Optional.ofNullable(headings.places().get(field))
        .filter(place -> place.column() < cells.size())
        .map(place -> cells.get(place.column()))
        .filter(cell -> !cell.isEmpty());
  }

  public String neededWords(String field) {
    return words(field).orElseThrow(() -> new CantRead("sheet.empty_cell", heading(field)));
  }

  /**
   * @param zone of what names none
   */
  public Optional<When> when(String field, ZoneId zone) {
    return words(field)
        .map(
            text ->
                When.parse(text, zone)
                    .orElseThrow(() -> new CantRead("sheet.no_date", named(field))));
  }

  /** In SI units; empty where there is no such column, or nothing in it. */
  public OptionalDouble number(String field) {
    Optional<String> cell = words(field);
    return cell.isPresent()
        ? OptionalDouble.of(si(headings.places().get(field), cell.get()))
        : OptionalDouble.empty();
  }

  public OptionalDouble number(String field, OptionalDouble otherwise) {
    OptionalDouble told = number(field);
    return told.isPresent() ? told : otherwise;
  }

  public double neededNumber(String field) {
    return number(field).orElseThrow(() -> new CantRead("sheet.empty_cell", heading(field)));
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

  /** A column's heading and what this line has in it, as a sentence names them. */
  public String named(String field) {
    return "%s \"%s\"".formatted(heading(field), words(field).orElse(""));
  }

  private String heading(String field) {
    return Optional.ofNullable(headings.places().get(field)).map(Place::heading).orElse(field);
  }
}
