package castwell.web;

import castwell.capture.cell.CellLedger;
import castwell.capture.season.SeasonLedger;
import castwell.capture.store.ManyShots;
import castwell.capture.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.ZoneId;

/** Data folders with very many shots, made once and kept. */
final class MeasuredStore {
  private static final Path ALL = Path.of("target", "many-shots");
  private static final long SEED = 4711;

  private MeasuredStore() {}

  /** 0 shots of an empty rack. */
  static Path of(int shots) throws IOException {
    Path folder = ALL.resolve(String.valueOf(shots));
    if (!Files.exists(folder)) {
      Files.createDirectories(folder);
      ManyShots.fill(folder, shots, SEED);
      try (Store store = Store.open(folder)) {
        CellLedger.make(store, ZoneId.systemDefault(), () -> false);
        SeasonLedger.make(store, ZoneId.systemDefault());
      }
    }
    return folder;
  }

  /** As after everything was taken in at once: no cell's sums are kept yet. */
  static Path withoutCells(int shots) throws IOException {
    Path folder = ALL.resolve(shots + "-unmade");
    if (!Files.exists(folder)) {
      Files.createDirectories(folder);
      Path file = folder.resolve("castwell.db");
      Files.copy(of(shots).resolve("castwell.db"), file);
      try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file)) {
        database.createStatement().execute("DELETE FROM cells_made");
      } catch (SQLException e) {
        throw new IOException(e);
      }
    }
    return folder;
  }
}
