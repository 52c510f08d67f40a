package castwell.web.http.live;

import castwell.capture.announce.Announcer;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.Feed;
import castwell.capture.store.HeardBeat;
import castwell.capture.store.Store;
import castwell.capture.store.StoreUnavailable;
import castwell.capture.store.Transaction;
import castwell.capture.view.Json;
import castwell.capture.view.station.StationNamed;
import castwell.web.http.api.PlanViews;
import castwell.web.http.api.Views;
import jakarta.servlet.ServletOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;

/**
 * Server-sent events (WHATWG HTML, 9.2): what was committed, in order, from each reader's own place
 * on. One thread reads the stored feed; a reader that is behind is served from the store, so a slow
 * one costs no memory and misses nothing.
 */
public final class LiveFeed implements Announcer.Listener, AutoCloseable {
  private static final int CHUNK = 32;
  private static final int MOST_CALLS = 256;
  private static final long KEEP_ALIVE_SECONDS = 15;
  private static final long RETRY_SECONDS = 1;
  private static final long STUCK_NANOS = TimeUnit.SECONDS.toNanos(60);
  private static final byte[] KEEP_ALIVE = ": still here\n\n".getBytes(StandardCharsets.UTF_8);

  private final Store store;
  private final Views views;
  private final Clock clock;
  private final LongSupplier nanos;
  private final List<LiveReader> readers = new CopyOnWriteArrayList<>();
  private final BlockingQueue<Optional<Said>> calls = new ArrayBlockingQueue<>(MOST_CALLS);
  private final AtomicBoolean fed = new AtomicBoolean();
  private final Thread thread = new Thread(this::run, "live-feed");
  private volatile boolean open = true;

  /** The store couldn't be read a moment ago. */
  private boolean behind;

  /** How something stands now: told to whoever is there, and not kept. */
  private record Said(String name, Object view) {}

  /** The newest beat of each station that wasn't told yet: no more wait, however slow this is. */
  private final Map<String, HeardBeat> beats = new ConcurrentHashMap<>();

  public LiveFeed(Store store, Views views, Clock clock, LongSupplier nanos) {
    this.nanos = nanos;
    this.store = store;
    this.views = views;
    this.clock = clock;
  }

  /**
   * @param died called with what ended the feed, should anything
   */
  public void start(Consumer<Throwable> died) {
    thread.setUncaughtExceptionHandler((t, e) -> died.accept(e));
    thread.start();
  }

  @Override
  public void fedMore() {
    if (fed.compareAndSet(false, true)) { // one call is enough for all that was fed
      call(Optional.empty());
    }
  }

  @Override
  public void linkChanged(LinkState state) {
    call(Optional.of(new Said("link", Views.link(state))));
  }

  @Override
  public void storeChanged(StoreState state) {
    call(Optional.of(new Said("store", Views.store(state))));
  }

  /** Where too many wait, the oldest state gives way: a newer one of its kind is on its way. */
  private void call(Optional<Said> next) {
    boolean feedForgotten = false;
    while (!calls.offer(next)) {
      Optional<Said> oldest = calls.poll();
      feedForgotten |= oldest != null && oldest.isEmpty();
    }
    if (feedForgotten) {
      fed.set(false);
      fedMore();
    }
  }

  @Override
  public void beatHeard(String station, HeardBeat beat) {
    if (readers.stream().anyMatch(LiveReader::wantsLight)) {
      beats.put(station, beat);
      fedMore();
    }
  }

  /**
   * A connection to be served from an item of the feed on.
   *
   * @param place the last item it knows
   * @param light whether each heartbeat's light is told too
   * @param left called once when the reader is gone
   */
  LiveReader reader(ServletOutputStream out, long place, boolean light, Runnable left) {
    return new LiveReader(out, place, light, this::fedMore, left, nanos);
  }

  void join(LiveReader reader) {
    reader.begin();
    readers.add(reader);
    fedMore();
  }

  private void run() {
    while (open) {
      try {
        Optional<Said> call =
            calls.poll(behind ? RETRY_SECONDS : KEEP_ALIVE_SECONDS, TimeUnit.SECONDS);
        if (call == null && !behind) {
          tellAll(KEEP_ALIVE);
        } else if (call != null && call.isPresent()) {
          tellAll(event("", call.get().name(), call.get().view()));
        } else {
          fed.set(false);
          tellLight();
          serveWhatCanBeRead();
        }
        dropTheGone();
      } catch (InterruptedException e) {
        open = false;
      }
    }
    readers.forEach(LiveReader::close);
  }

  private void tellAll(byte[] event) {
    readers.stream().filter(LiveReader::hasRoom).forEach(reader -> reader.offer(event));
  }

  private void serveWhatCanBeRead() {
    try {
      serve();
      behind = false;
    } catch (StoreUnavailable e) {
      behind = true; // its place tells each reader's next item, whenever that is
    }
  }

  private void tellLight() {
    for (String station : beats.keySet()) {
      byte[] event = event("", "light", Views.light(station, beats.remove(station)));
      readers.stream()
          .filter(reader -> reader.wantsLight() && reader.hasRoom())
          .forEach(reader -> reader.offer(event));
    }
  }

  /**
   * Readers at the same place share what is read for them. Those who know most come first: they
   * don't wait for others to catch up.
   */
  private void serve() {
    boolean more = true;
    while (more && open) {
      more = false;
      var places =
          readers.stream()
              .filter(reader -> !reader.isGone() && reader.hasRoom())
              .collect(
                  Collectors.groupingBy(
                      LiveReader::place,
                      () -> new TreeMap<>(Comparator.reverseOrder()),
                      Collectors.toList()));
      for (var place : places.entrySet()) {
        more |= serve(place.getKey(), place.getValue());
        if (fed.getAndSet(false)) {
          more = true;
          break; // something new: to the first again
        }
      }
    }
  }

  private boolean serve(long place, List<LiveReader> together) {
    return store.read(
        t -> {
          List<Feed.Item> items = t.feed().after(place, CHUNK);
          for (Feed.Item item : items) {
            byte[] event = event(t, item);
            for (LiveReader reader : together) {
              reader.offer(event);
              reader.moveTo(item.id());
            }
          }
          return items.size() == CHUNK;
        });
  }

  private byte[] event(Transaction t, Feed.Item item) {
    String id = String.valueOf(item.id());
    StationNamed about = new StationNamed(item.station());
    return switch (item.kind()) {
      case SHOT ->
          t.shots()
              .byPassage(item.passageId().orElseThrow())
              .map(shot -> event(id, item.kind().word(), views.shot(shot)))
              // It has become part of another passage since.
              .orElseGet(() -> event(id, Feed.Kind.REFRESH.word(), about));
      case TAGS -> event(id, item.kind().word(), views.tags(t, item.station(), clock.instant()));
      case PLAN ->
          event(
              id,
              item.kind().word(),
              PlanViews.current(t, item.station()).<Object>map(view -> view).orElse(about));
      case RACK, REFRESH -> event(id, item.kind().word(), about);
    };
  }

  private static byte[] event(String id, String name, Object data) {
    String place = id.isEmpty() ? "" : "id: " + id + "\n";
    String text = place + "event: " + name + "\ndata: " + Json.text(data) + "\n\n";
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private void dropTheGone() {
    readers.stream().filter(reader -> reader.stuckNanos() > STUCK_NANOS).forEach(LiveReader::close);
    readers.removeIf(LiveReader::isGone);
  }

  @Override
  public void close() {
    open = false;
    thread.interrupt();
    try {
      thread.join(2_000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
