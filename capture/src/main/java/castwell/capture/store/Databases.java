package castwell.capture.store;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Types;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.argument.AbstractArgumentFactory;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.config.ConfigRegistry;
import org.jdbi.v3.core.mapper.ColumnMapper;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteDataSource;

/** Opens database files, and says in words why one can't be opened. */
final class Databases {
  private static final int BUSY_MILLIS = 5_000;
  private static final int HEADER_BYTES = 100;

  private Databases() {}

  static Jdbi jdbi(Path file) {
    return jdbi("jdbc:sqlite:" + file);
  }

  /**
   * Opens a file to read. Where nothing can be written, SQLite reads only a file that it is told
   * nobody changes; one that somebody writes to has a write-ahead log beside it. Source: SQLite's
   * "Write-Ahead Logging", 5, and "Uniform Resource Identifiers", 3.2.
   */
  static Jdbi jdbiToRead(Path file) throws IOException {
    boolean still = !Files.isWritable(file.toAbsolutePath().getParent()) && sizeOf(log(file)) == 0;
    return still ? jdbi("jdbc:sqlite:" + file.toUri() + "?immutable=1") : jdbi(file);
  }

  private static Path log(Path file) {
    return file.resolveSibling(file.getFileName() + "-wal");
  }

  private static Jdbi jdbi(String url) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(JournalMode.WAL);
    config.setSynchronous(SynchronousMode.FULL);
    config.enforceForeignKeys(true);
    config.setBusyTimeout(BUSY_MILLIS);
    // Asking for them takes as long as writing the row: see BareSql.
    config.setGetGeneratedKeys(false);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl(url);
    Jdbi jdbi = Jdbi.create(source);
    jdbi.setStatementBuilderFactory(connection -> new KeptStatements());
    jdbi.registerArgument(new InstantAsMillis());
    jdbi.registerColumnMapper(
        Instant.class,
        (ColumnMapper<Instant>)
            (row, column, context) -> Instant.ofEpochMilli(row.getLong(column)));
    return jdbi;
  }

  /**
   * Refuses a file that was cut short. SQLite notices when whole pages are missing, but not half a
   * page, nor a file with hardly anything in it. Pages that only the write-ahead log holds aren't
   * missing.
   *
   * @throws StoreRefused when the file's end is missing
   */
  static void refuseCut(Path file) {
    try {
      if (!Files.isRegularFile(file) || sizeOf(log(file)) > 0) {
        return;
      }
      long size = Files.size(file);
      int page = pageBytes(file);
      if (size > 0 && size < HEADER_BYTES || page > 0 && size % page != 0) {
        throw new StoreRefused(
            "%s is cut short: put back a backup of it, or name another folder with --data."
                .formatted(file));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static long sizeOf(Path file) throws IOException {
    return Files.exists(file) ? Files.size(file) : 0;
  }

  /**
   * The page size; 0 where the file is no database. Source: SQLite's "Database File Format", 1.3.
   */
  private static int pageBytes(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      ByteBuffer header = ByteBuffer.wrap(in.readNBytes(HEADER_BYTES));
      if (header.limit() < HEADER_BYTES
          || !new String(header.array(), 0, 16, US_ASCII).equals("SQLite format 3\0")) {
        return 0;
      }
      int bytes = Short.toUnsignedInt(header.getShort(16));
      return bytes == 1 ? 65_536 : bytes;
    }
  }

  static RuntimeException refused(Path file, RuntimeException e) {
    if (e instanceof StoreRefused) {
      return e;
    }
    Optional<StoreUnavailable> trouble = StoreUnavailable.ofDisk(file, e);
    if (trouble.isPresent()) {
      return new StoreRefused(trouble.get());
    }
    if (hasCause(e, NativeLibraryNotFoundException.class)) {
      return new StoreRefused(
          "SQLite can't be unpacked into %s, nor into %s: free some space there."
              .formatted(file.resolveSibling("native"), System.getProperty("java.io.tmpdir")),
          e);
    }
    return new StoreRefused(
        "%s can't be opened as Castwell's database (%s): put back a backup of it, or name another folder with --data."
            .formatted(file, rootMessage(e)),
        e);
  }

  private static boolean hasCause(Throwable e, Class<? extends Throwable> type) {
    return e != null && (type.isInstance(e) || hasCause(e.getCause(), type));
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
