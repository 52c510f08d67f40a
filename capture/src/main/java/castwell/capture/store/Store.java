package castwell.capture.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The data folder: one SQLite file with one writer. What a transaction wrote is on the disk when
 * {@link #write} returns.
 */
public final class Store implements AutoCloseable {
  static final String FILE = "castwell.db";

  private final Path folder;
  private final Jdbi jdbi;
  private final Optional<Claim> claim;

  /**
   * The writer's connection. It is opened anew after trouble, which may leave one in the middle of
   * a transaction.
   */
  private Optional<Handle> writer;

  /**
   * Connections for readers. Opening one takes longer than most reads, so as many stay open as were
   * ever used at once.
   */
  private final ConcurrentLinkedDeque<Handle> readers = new ConcurrentLinkedDeque<>();

  private final ReentrantLock writing = new ReentrantLock();
  private final Remembered remembered = new Remembered();

  private Store(Path folder, Jdbi jdbi, Optional<Handle> writer, Optional<Claim> claim) {
    this.folder = folder;
    this.jdbi = jdbi;
    this.writer = writer;
    this.claim = claim;
  }

  /**
   * Opens the folder to write, making it if need be, and keeps every other program from writing
   * there.
   *
   * @throws StoreRefused when that can't be done
   */
  public static Store open(Path folder) {
    Path file = folder.resolve(FILE);
    Claim claim = Claim.on(folder);
    try {
      NativeLibrary.unpackInto(folder);
      Databases.refuseCut(file);
      Jdbi jdbi = Databases.jdbi(file);
      jdbi.useHandle(handle -> Schema.migrate(handle, file, Schema.STEPS));
      return new Store(folder, jdbi, Optional.of(jdbi.open()), Optional.of(claim));
    } catch (RuntimeException e) {
      claim.close();
      throw Databases.refused(file, e);
    }
  }

  /**
   * Opens the folder to read, beside a program that may be writing there.
   *
   * @throws StoreRefused when that can't be done, or there is nothing yet
   */
  public static Store openToRead(Path folder) {
    Path file = folder.resolve(FILE);
    if (!Files.exists(file)) {
      throw new StoreRefused(
          "There is no data in %s yet: shoot, replay a recording, or name another folder with --data."
              .formatted(folder));
    }
    try {
      NativeLibrary.unpackInto(folder);
      Databases.refuseCut(file);
      Jdbi jdbi = Databases.jdbiToRead(file);
      int version = jdbi.withHandle(Schema::version);
      Schema.refuseNewer(version, file, Schema.STEPS);
      if (version < Schema.STEPS.size()) {
        open(folder).close();
      }
      return new Store(folder, jdbi, Optional.empty(), Optional.empty());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (RuntimeException e) {
      throw Databases.refused(file, e);
    }
  }

  /**
   * Does all of the work or nothing, and returns when it is on the disk.
   *
   * @throws StoreUnavailable when the machine doesn't let it
   */
  public <T> T write(Function<Transaction, T> work) {
    if (claim.isEmpty()) {
      throw new IllegalStateException("this store is open to read only");
    }
    writing.lock();
    try {
      Handle handle = writer.orElseGet(jdbi::open);
      writer = Optional.of(handle);
      return handle.inTransaction(h -> work.apply(new Transaction(h, remembered)));
    } catch (RuntimeException e) {
      throw trouble(e);
    } finally {
      writing.unlock();
    }
  }

  private RuntimeException trouble(RuntimeException e) {
    Optional<StoreUnavailable> trouble = StoreUnavailable.of(folder, e);
    if (trouble.isPresent()) {
      writer.ifPresent(Store::closeQuietly);
      writer = Optional.empty();
    }
    return trouble.map(RuntimeException.class::cast).orElse(e);
  }

  private static void closeQuietly(Handle handle) {
    try {
      handle.close();
    } catch (RuntimeException e) {
      // What it was doing is undone already.
    }
  }

  /** The folder in which the database file is. */
  public Path folder() {
    return folder;
  }

  /** Does the work, reads its result, and undoes it: nothing of it is kept. */
  public <T> T tryOut(Function<Transaction, T> work) {
    return write(
        transaction -> {
          T result = work.apply(transaction);
          transaction.handle().rollback();
          return result;
        });
  }

  public void writing(Consumer<Transaction> work) {
    write(
        transaction -> {
          work.accept(transaction);
          return null;
        });
  }

  /**
   * Writes something that changes nothing, to see whether it reaches the disk.
   *
   * @throws StoreUnavailable when it doesn't
   */
  public void probe() {
    writing(t -> t.handle().execute("PRAGMA user_version = " + Schema.version(t.handle())));
  }

  /**
   * Reads one consistent state. Within {@link #write} it also reads what that has written so far.
   *
   * @throws StoreUnavailable when the machine doesn't let it
   */
  public <T> T read(Function<Transaction, T> work) {
    if (writing.isHeldByCurrentThread()) {
      return write(work);
    }
    Optional<Handle> handle = Optional.ofNullable(readers.poll());
    try {
      handle = Optional.of(handle.orElseGet(jdbi::open));
      T result = handle.get().inTransaction(h -> work.apply(new Transaction(h, remembered)));
      readers.push(handle.get());
      return result;
    } catch (RuntimeException e) {
      handle.ifPresent(Store::closeQuietly);
      throw StoreUnavailable.of(folder, e).map(RuntimeException.class::cast).orElse(e);
    }
  }

  @Override
  public void close() {
    writing.lock();
    try {
      readers.forEach(Handle::close);
      writer.ifPresent(Handle::close);
      claim.ifPresent(Claim::close);
    } finally {
      writing.unlock();
    }
  }

  /**
   * How much room there is on the disk.
   *
   * @param freeBytes what this program may still write
   * @param databaseBytes what the database takes, its log included
   */
  public record Room(long freeBytes, long databaseBytes) {}

  /** The room on the disk; empty where the system doesn't tell. */
  public Optional<Room> room() {
    Path file = folder.resolve(FILE);
    Path log = folder.resolve(FILE + "-wal");
    try {
      long bytes = Files.size(file) + (Files.exists(log) ? Files.size(log) : 0);
      return Optional.of(new Room(Files.getFileStore(folder).getUsableSpace(), bytes));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** Whether a program is writing to the folder now. */
  public static boolean isHeld(Path folder) {
    return Claim.isHeld(folder);
  }
}
