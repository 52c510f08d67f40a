package castwell.capture.store;

import java.nio.file.Path;
import java.sql.Types;
import java.time.Instant;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.argument.AbstractArgumentFactory;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.config.ConfigRegistry;
import org.jdbi.v3.core.mapper.ColumnMapper;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteDataSource;

/** How a database file is opened, and what a person is told when it can't be. */
final class Databases {
  private static final int BUSY_MILLIS = 5_000;

  private Databases() {}

  static Jdbi jdbi(Path file) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(JournalMode.WAL);
    config.setSynchronous(SynchronousMode.FULL);
    config.enforceForeignKeys(true);
    config.setBusyTimeout(BUSY_MILLIS);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    Jdbi jdbi = Jdbi.create(source);
    jdbi.registerArgument(new InstantAsMillis());
    jdbi.registerColumnMapper(
        Instant.class,
        (ColumnMapper<Instant>)
            (row, column, context) -> Instant.ofEpochMilli(row.getLong(column)));
    return jdbi;
  }

  static RuntimeException refused(Path file, RuntimeException e) {
    if (e instanceof StoreRefused) {
      return e;
    }
    return new StoreRefused(
        "%s can't be opened as Castwell's database (%s): put back a backup of it, or name another folder with --data."
            .formatted(file, rootMessage(e)),
        e);
  }

  private static String rootMessage(Throwable e) {
    Throwable root = e;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    return String.valueOf(root.getMessage()).lines().findFirst().orElse("no reason given");
  }

  private static final class InstantAsMillis extends AbstractArgumentFactory<Instant> {
    InstantAsMillis() {
      super(Types.BIGINT);
    }

    @Override
    protected Argument build(Instant value, ConfigRegistry config) {
      return (position, statement, context) -> statement.setLong(position, value.toEpochMilli());
    }
  }
}
