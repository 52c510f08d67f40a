package castwell.capture.store;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measure;
import castwell.capture.measure.Measures;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jdbi.v3.core.statement.Update;

/** The columns that a table has for the measures of a catalogue. */
final class MeasureColumns<M extends Enum<M> & Measure> {
  static final MeasureColumns<BowMeasure> BOW =
      new MeasureColumns<>("bow_state", BowMeasure.values());
  static final MeasureColumns<ArrowMeasure> ARROW =
      new MeasureColumns<>("arrow_entry", ArrowMeasure.values());

  private final String table;
  private final List<M> catalogue;

  private MeasureColumns(String table, M[] catalogue) {
    this.table = table;
    this.catalogue = List.of(catalogue);
  }

  /** The columns for a query, under names that no other table has. */
  String read() {
    return joined(measure -> "%s.%s AS %s".formatted(table, measure.column(), alias(measure)));
  }

  /** The columns' names, for writing a row. */
  String names() {
    return joined(Measure::column);
  }

  /** The parameters of a statement that writes a row. */
  String places() {
    return joined(measure -> ":" + alias(measure));
  }

  private String joined(Function<M, String> column) {
    return catalogue.stream().map(column).collect(Collectors.joining(", "));
  }

  private String alias(M measure) {
    return table + "_" + measure.column();
  }

  void bind(Update update, Measures<M> measures) {
    for (M measure : catalogue) {
      if (measure.number().isPresent()) {
        update.bind(alias(measure), measures.number(measure));
      } else {
        update.bind(alias(measure), measures.words(measure));
      }
    }
  }

  /** The measures in a row that was read. */
  Measures<M> of(ResultSet row) throws SQLException {
    SortedMap<M, Double> numbers = new TreeMap<>();
    SortedMap<M, String> words = new TreeMap<>();
    for (M measure : catalogue) {
      if (measure.number().isPresent()) {
        Columns.optional(row, alias(measure)).ifPresent(si -> numbers.put(measure, si));
      } else {
        Columns.optionalText(row, alias(measure)).ifPresent(text -> words.put(measure, text));
      }
    }
    return new Measures<>(numbers, words);
  }
}
