package castwell.capture.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;

/** Boards and stretches of listening to them. */
public final class Boards {
  private static final RowMapper<Board> BOARD = ConstructorMapper.of(Board.class);

  private final Handle handle;

  Boards(Handle handle) {
    this.handle = handle;
  }

  /** All series of boards of that name, the latest first. */
  public List<Board> named(String device) {
    return handle
        .createQuery("SELECT * FROM board WHERE device = ? ORDER BY series DESC")
        .bind(0, device)
        .map(BOARD)
        .list();
  }

  /**
   * All series of boards of that name; those that the station has heard come before the others, the
   * one heard last at the top.
   */
  public List<Board> named(String device, String station) {
    return handle
        .createQuery(
            """
            SELECT board.* FROM board WHERE device = ?
            ORDER BY coalesce((SELECT max(listening.id) FROM identity JOIN listening ON listening.id = listening_id
              WHERE board_id = board.id AND station = ?), 0) DESC, series DESC""")
        .bind(0, device)
        .bind(1, station)
        .map(BOARD)
        .list();
  }

  /** Begins a new series of boards of that name. */
  public Board begin(String device) {
    int series = named(device).stream().mapToInt(Board::series).findFirst().orElse(0) + 1;
    handle.execute("INSERT INTO board (device, series) VALUES (?, ?)", device, series);
    return named(device).get(0);
  }

  /**
   * The stretch of listening of that station, source and start; it is begun where there is none
   * yet.
   */
  public long listening(String station, String source, Instant started) {
    String find = "SELECT id FROM listening WHERE station = ? AND source = ? AND started_ms = ?";
    Optional<Long> known =
        handle
            .createQuery(find)
            .bind(0, station)
            .bind(1, source)
            .bind(2, started)
            .mapTo(Long.class)
            .findOne();
    return known.orElseGet(
        () ->
            BareSql.returning(
                handle,
                "INSERT INTO listening (station, source, started_ms) VALUES (?, ?, ?) RETURNING id",
                station,
                source,
                started));
  }
}
