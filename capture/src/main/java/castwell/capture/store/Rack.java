package castwell.capture.store;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;
import org.jdbi.v3.core.statement.Update;

/** The bows with their states in time, and the arrows. */
public final class Rack {
  private static final RowMapper<Named> NAMED = ConstructorMapper.of(Named.class);

  private static final RowMapper<BowState> BOW_STATE =
      (row, context) ->
          new BowState(
              row.getString("name"),
              row.getLong("bow_id"),
              Instant.ofEpochMilli(row.getLong("since_ms")),
              row.getDouble("draw_weight_n"),
              row.getDouble("draw_length_m"),
              MeasureColumns.BOW.of(row),
              row.getString("done"));

  private static final RowMapper<Arrow> ARROW =
      (row, context) ->
          new Arrow(
              row.getLong("id"),
              row.getString("name"),
              row.getDouble("mass_kg"),
              MeasureColumns.ARROW.of(row));

  private final Handle handle;

  /** A thing with a name: a bow or an arrow. */
  public record Named(long id, String name) {}

  /**
   * A bow's state, from one thing that was done to it to the next.
   *
   * @param done what was done at its beginning, may be empty
   */
  public record BowState(
      String bow,
      long bowId,
      Instant since,
      double drawWeightN,
      double drawLengthM,
      Measures<BowMeasure> measures,
      String done) {}

  /** An arrow as last entered. */
  public record Arrow(long id, String name, double massKg, Measures<ArrowMeasure> measures) {
    public OptionalDouble lengthM() {
      return measures.number(ArrowMeasure.LENGTH);
    }

    public OptionalDouble diameterM() {
      return measures.number(ArrowMeasure.DIAMETER);
    }
  }

  Rack(Handle handle) {
    this.handle = handle;
  }

  public Optional<Named> bow(String name) {
    return named("bow", name);
  }

  public Optional<Named> arrow(String name) {
    return named("arrow", name);
  }

  private Optional<Named> named(String table, String name) {
    return handle
        .createQuery("SELECT id, name FROM " + table + " WHERE name = ?")
        .bind(0, name)
        .map(NAMED)
        .findOne();
  }

  /** The bows in the order entered. */
  public List<Named> bowNames() {
    return handle.createQuery("SELECT id, name FROM bow ORDER BY id").map(NAMED).list();
  }

  public long addBow(String name, Instant entered) {
    return add("bow", name, entered);
  }

  public long addArrow(String name, Instant entered) {
    return add("arrow", name, entered);
  }

  private long add(String table, String name, Instant entered) {
    return BareSql.returning(
        handle,
        "INSERT INTO " + table + " (name, entered_ms) VALUES (?, ?) RETURNING id",
        name,
        entered);
  }

  public void addState(
      long bowId,
      Instant since,
      double drawWeightN,
      double drawLengthM,
      Measures<BowMeasure> measures,
      String done,
      Instant entered) {
    Update update =
        handle.createUpdate(
            """
            INSERT INTO bow_state (bow_id, since_ms, draw_weight_n, draw_length_m, %s, done, entered_ms)
            VALUES (:bowId, :since, :drawWeightN, :drawLengthM, %s, :done, :entered)"""
                .formatted(MeasureColumns.BOW.names(), MeasureColumns.BOW.places()));
    MeasureColumns.BOW.bind(update, measures);
    update
        .bind("bowId", bowId)
        .bind("since", since)
        .bind("drawWeightN", drawWeightN)
        .bind("drawLengthM", drawLengthM)
        .bind("done", done)
        .bind("entered", entered)
        .execute();
  }

  public void enterArrow(
      long arrowId, double massKg, Measures<ArrowMeasure> measures, Instant entered) {
    Update update =
        handle.createUpdate(
            """
            INSERT INTO arrow_entry (arrow_id, mass_kg, %s, entered_ms)
            VALUES (:arrowId, :massKg, %s, :entered)"""
                .formatted(MeasureColumns.ARROW.names(), MeasureColumns.ARROW.places()));
    MeasureColumns.ARROW.bind(update, measures);
    update.bind("arrowId", arrowId).bind("massKg", massKg).bind("entered", entered).execute();
  }

  /**
   * The state in force at an instant: the last one begun by then, or the first one for an instant
   * before it.
   */
  public Optional<BowState> state(long bowId, Instant at) {
    List<BowState> states = states(bowId);
    return states.stream()
        .filter(state -> !state.since().isAfter(at))
        .reduce((first, second) -> second)
        .or(() -> states.stream().findFirst());
  }

  /**
   * A bow's states from the first to the last. Where two have the same beginning, the last entered
   * holds.
   */
  public List<BowState> states(long bowId) {
    return handle
        .createQuery(
            """
            SELECT bow.name, bow_id, since_ms, draw_weight_n, draw_length_m, done, %s
            FROM bow_state JOIN bow ON bow.id = bow_id
            WHERE bow_id = ? AND bow_state.id IN
              (SELECT max(id) FROM bow_state WHERE bow_id = ? GROUP BY since_ms)
            ORDER BY since_ms"""
                .formatted(MeasureColumns.BOW.read()))
        .bind(0, bowId)
        .bind(1, bowId)
        .map(BOW_STATE)
        .list();
  }

  /** The arrows in the order first entered. */
  public List<Arrow> arrows() {
    return handle
        .createQuery(
            """
            SELECT arrow.id, name, mass_kg, %s FROM arrow
            JOIN arrow_entry ON arrow_entry.id =
              (SELECT max(id) FROM arrow_entry WHERE arrow_id = arrow.id)
            ORDER BY arrow.id"""
                .formatted(MeasureColumns.ARROW.read()))
        .map(ARROW)
        .list();
  }

  public Optional<Arrow> arrowById(long id) {
    return arrows().stream().filter(arrow -> arrow.id() == id).findFirst();
  }
}
