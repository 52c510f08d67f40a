package castwell.capture.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;

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
              measures(row),
              row.getString("done"));

  private static final RowMapper<Arrow> ARROW =
      (row, context) ->
          new Arrow(
              row.getLong("id"),
              row.getString("name"),
              row.getDouble("mass_kg"),
              Columns.optional(row, "length_m"),
              Columns.optional(row, "diameter_m"),
              Columns.optionalText(row, "point"),
              Columns.optionalText(row, "note"));

  private final Handle handle;

  /** A thing with a name: a bow or an arrow. */
  public record Named(long id, String name) {}

  /**
   * A bow between two things done to it.
   *
   * @param done what was last done to it, may be empty
   */
  public record BowState(
      String bow,
      long bowId,
      Instant since,
      double drawWeightN,
      double drawLengthM,
      Measures measures,
      String done) {}

  /**
   * What else was measured of a bow in a state, each where it was.
   *
   * @param stringFollowM how far the unstrung tips stay behind the back; below 0 where they stand
   *     before it
   */
  public record Measures(
      OptionalDouble nockToNockM,
      OptionalDouble stringFollowM,
      OptionalDouble braceHeightM,
      OptionalDouble massKg,
      Optional<String> wood,
      OptionalDouble tipWidthM,
      OptionalDouble stringMassKg) {
    private static final OptionalDouble NOT_KNOWN = OptionalDouble.empty();

    public static final Measures NONE =
        new Measures(
            NOT_KNOWN, NOT_KNOWN, NOT_KNOWN, NOT_KNOWN, Optional.empty(), NOT_KNOWN, NOT_KNOWN);
  }

  /** An arrow as last entered. */
  public record Arrow(
      long id,
      String name,
      double massKg,
      OptionalDouble lengthM,
      OptionalDouble diameterM,
      Optional<String> point,
      Optional<String> note) {}

  /** What is read as {@code bow_state.*} beside a bow's name. */
  static Measures measures(ResultSet row) throws SQLException {
    return new Measures(
        Columns.optional(row, "nock_to_nock_m"),
        Columns.optional(row, "string_follow_m"),
        Columns.optional(row, "brace_height_m"),
        Columns.optional(row, "bow_mass_kg"),
        Columns.optionalText(row, "wood"),
        Columns.optional(row, "tip_width_m"),
        Columns.optional(row, "string_mass_kg"));
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
      Measures measures,
      String done,
      Instant entered) {
    handle
        .createUpdate(
            """
            INSERT INTO bow_state (bow_id, since_ms, draw_weight_n, draw_length_m, nock_to_nock_m, string_follow_m,
              brace_height_m, mass_kg, wood, tip_width_m, string_mass_kg, done, entered_ms)
            VALUES (:bowId, :since, :drawWeightN, :drawLengthM, :nockToNockM, :stringFollowM,
              :braceHeightM, :massKg, :wood, :tipWidthM, :stringMassKg, :done, :entered)""")
        .bindMethods(measures)
        .bind("bowId", bowId)
        .bind("since", since)
        .bind("drawWeightN", drawWeightN)
        .bind("drawLengthM", drawLengthM)
        .bind("done", done)
        .bind("entered", entered)
        .execute();
  }

  public void enterArrow(
      long arrowId,
      double massKg,
      OptionalDouble lengthM,
      OptionalDouble diameterM,
      Optional<String> point,
      Optional<String> note,
      Instant entered) {
    handle
        .createUpdate(
            """
            INSERT INTO arrow_entry (arrow_id, mass_kg, length_m, diameter_m, point, note, entered_ms)
            VALUES (?, ?, ?, ?, ?, ?, ?)""")
        .bind(0, arrowId)
        .bind(1, massKg)
        .bind(2, lengthM)
        .bind(3, diameterM)
        .bind(4, point)
        .bind(5, note)
        .bind(6, entered)
        .execute();
  }

  /**
   * The state in force at an instant: the latest begun by then, the first there is for anything
   * before it.
   */
  public Optional<BowState> state(long bowId, Instant at) {
    List<BowState> states = states(bowId);
    return states.stream()
        .filter(state -> !state.since().isAfter(at))
        .reduce((first, second) -> second)
        .or(() -> states.stream().findFirst());
  }

  /** A bow's states from the first to the last; of two with one beginning the last entered. */
  public List<BowState> states(long bowId) {
    return handle
        .createQuery(
            """
            SELECT bow.name, bow_state.*, mass_kg AS bow_mass_kg FROM bow_state JOIN bow ON bow.id = bow_id
            WHERE bow_id = ? AND bow_state.id IN
              (SELECT max(id) FROM bow_state WHERE bow_id = ? GROUP BY since_ms)
            ORDER BY since_ms""")
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
            SELECT arrow.id, name, mass_kg, length_m, diameter_m, point, note FROM arrow
            JOIN arrow_entry ON arrow_entry.id =
              (SELECT max(id) FROM arrow_entry WHERE arrow_id = arrow.id)
            ORDER BY arrow.id""")
        .map(ARROW)
        .list();
  }

  public Optional<Arrow> arrowById(long id) {
    return arrows().stream().filter(arrow -> arrow.id() == id).findFirst();
  }
}
