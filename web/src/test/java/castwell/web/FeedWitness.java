package castwell.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;

/** Whoever looks at the range page: remembers each shot that it was told of, by any daemon. */
final class FeedWitness implements AutoCloseable {
  private final Set<String> shots = new ConcurrentSkipListSet<>();
  private volatile Thread listening = new Thread();

  /**
   * Listens until that daemon is gone.
   *
   * @param said a daemon's first line, with its address
   */
  void listenTo(String said) {
    URI live = URI.create(said.replaceFirst(".*(http:.*)", "$1") + "api/live");
    try {
      FeedReader reader = FeedReader.after(live, 0);
      listening = new Thread(() -> hear(reader), "witness");
      listening.start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void hear(FeedReader reader) {
    try (reader) {
      while (true) {
        FeedReader.Event event = reader.next();
        if (event.kind().equals("shot")) {
          shots.add(event.data().at("/shot_id").asText());
        }
      }
    } catch (IOException e) {
      // the daemon is gone
    }
  }

  /** All it was told, once the daemon is gone. */
  Set<String> shots() {
    close();
    return shots;
  }

  @Override
  public void close() {
    try {
      listening.join();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
