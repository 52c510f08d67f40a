package castwell.capture.announce;

import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * A store that commits what a person says, and only then tells whoever listens that there is more.
 */
public record AnnouncedStore(Store store, Announcer announcer) {

  public <T> T write(Function<Transaction, T> work) {
    T result = store.write(work);
    announcer.fedMore();
    return result;
  }

  public void writing(Consumer<Transaction> work) {
    store.writing(work);
    announcer.fedMore();
  }
}
