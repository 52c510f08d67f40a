package castwell.capture.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A transaction is on the disk when it returns, whole or not at all, and readers see whole ones.
 */
class DurabilityTest {
  @TempDir Path folder;
  private Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private static String pragma(Handle handle, String name) {
    return handle.createQuery("PRAGMA " + name).mapTo(String.class).one();
  }

  private List<String> bows() {
    return store.read(t -> t.rack().bowNames()).stream().map(Rack.Named::name).toList();
  }

  @Test
  void everyConnectionWritesAheadAndSyncsFully() {
    // SQLite's documentation of PRAGMA synchronous: 2 is FULL
    Databases.jdbi(folder.resolve("castwell.db"))
        .useHandle(
            handle -> {
              assertThat(pragma(handle, "journal_mode")).isEqualTo("wal");
              assertThat(pragma(handle, "synchronous")).isEqualTo("2");
              assertThat(pragma(handle, "foreign_keys")).isEqualTo("1");
            });
    assertThat(folder.resolve("castwell.db-wal")).exists();
  }

  @Test
  void theStoresOwnConnectionsDoToo() {
    store.writing(
        t -> {
          assertThat(pragma(t.handle(), "synchronous")).isEqualTo("2");
          assertThat(pragma(t.handle(), "journal_mode")).isEqualTo("wal");
        });
    store.read(t -> assertThat(pragma(t.handle(), "journal_mode")).isEqualTo("wal"));
  }

  @Test
  void aReaderBesideAnOpenTransactionSeesTheOldState() {
    store.writing(t -> t.rack().addBow("heron", Rows.NOON));
    store.writing(
        t -> {
          t.rack().addBow("wren", Rows.NOON);
          assertThat(t.rack().bowNames()).hasSize(2);
          try (Store beside = Store.openToRead(store.folder())) {
            assertThat(Rows.list(beside, r -> r.rack().bowNames())).hasSize(1);
          }
        });
    assertThat(bows()).containsExactly("heron", "wren");
  }

  @Test
  void aReaderKeepsSeeingTheStateThatItBeganWith() {
    store.writing(t -> t.rack().addBow("heron", Rows.NOON));
    store.read(
        t -> {
          assertThat(t.rack().bowNames()).hasSize(1);
          store.writing(w -> w.rack().addBow("wren", Rows.NOON));
          return assertThat(t.rack().bowNames()).hasSize(1);
        });
    assertThat(bows()).containsExactly("heron", "wren");
  }

  @Test
  void whatFailsHalfwayLeavesNothing() {
    assertThatThrownBy(
            () ->
                store.writing(
                    t -> {
                      Rows.shoot(t, 1, Rows.NOON, true);
                      throw new IllegalStateException("a bug");
                    }))
        .hasMessage("a bug");
    assertThat(Rows.list(store, t -> t.sessions().all())).isEmpty();
    store.writing(t -> Rows.shoot(t, 1, Rows.NOON, true));
    assertThat(Rows.list(store, t -> t.sessions().all())).hasSize(1);
  }

  @Test
  void whatWasCommittedIsThereForAnyoneElse() {
    store.writing(t -> Rows.shoot(t, 1, Rows.NOON, true));
    try (Store reader = Store.openToRead(folder)) {
      assertThat(Rows.list(reader, t -> t.shots().ofSession(Rows.DATE))).hasSize(1);
      store.writing(t -> Rows.shoot(t, 5, Rows.NOON, true));
      assertThat(Rows.list(reader, t -> t.shots().ofSession(Rows.DATE))).hasSize(2);
      assertThatThrownBy(() -> reader.writing(t -> t.rack().addBow("heron", Rows.NOON)))
          .isInstanceOf(IllegalStateException.class);
    }
  }
}
