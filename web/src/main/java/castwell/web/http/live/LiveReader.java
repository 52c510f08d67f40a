package castwell.web.http.live;

import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.LongSupplier;

/**
 * One reader of the live feed. Writing never waits: what its connection can't take yet stays in a
 * bounded queue, and the feed goes on from the reader's own place once there is room.
 */
final class LiveReader implements WriteListener {
  private static final int MOST_WAITING = 256;

  private final ServletOutputStream out;
  private final boolean light;
  private final Runnable drained;
  private final Runnable left;
  private final LongSupplier nanos;
  private final Queue<byte[]> waiting = new ArrayDeque<>();
  private boolean unflushed;
  private boolean started;
  private final CompletableFuture<Void> finished = new CompletableFuture<>();
  private final AtomicBoolean gone = new AtomicBoolean();
  private volatile long lastProgressNanos;

  /** The last feed item put into the queue; kept by the feed's thread. */
  private long place;

  /**
   * @param place the last feed item it knows
   * @param light whether each heartbeat's light is told too
   * @param drained called when there is room again
   * @param left called once when it is gone
   * @param nanos a monotonic clock
   */
  LiveReader(
      ServletOutputStream out,
      long place,
      boolean light,
      Runnable drained,
      Runnable left,
      LongSupplier nanos) {
    this.light = light;
    this.out = out;
    this.place = place;
    this.drained = drained;
    this.left = left;
    this.nanos = nanos;
    this.lastProgressNanos = nanos.getAsLong();
  }

  boolean wantsLight() {
    return light;
  }

  void begin() {
    out.setWriteListener(this);
  }

  long place() {
    return place;
  }

  void moveTo(long item) {
    place = item;
  }

  synchronized boolean hasRoom() {
    return waiting.size() < MOST_WAITING;
  }

  boolean isGone() {
    return gone.get();
  }

  /** Done when the answer is to be ended; never, where the server ended it by itself. */
  CompletableFuture<?> finished() {
    return finished;
  }

  /** How long its connection has taken nothing of what waits; 0 when nothing waits. */
  synchronized long stuckNanos() {
    return waiting.isEmpty() ? 0 : nanos.getAsLong() - lastProgressNanos;
  }

  synchronized void offer(byte[] event) {
    if (waiting.isEmpty()) {
      lastProgressNanos = nanos.getAsLong();
    }
    waiting.add(event);
    if (started) {
      drain();
    }
  }

  @Override
  public synchronized void onWritePossible() {
    started = true;
    drain();
  }

  @Override
  public void onError(Throwable e) {
    close();
  }

  private void drain() {
    try {
      boolean hadRoom = waiting.size() < MOST_WAITING;
      while (!isGone() && out.isReady()) {
        byte[] next = waiting.poll();
        if (next != null) {
          out.write(next);
          unflushed = true;
          lastProgressNanos = nanos.getAsLong();
        } else if (unflushed) {
          unflushed = false;
          out.flush();
        } else {
          break;
        }
      }
      if (!hadRoom && waiting.size() < MOST_WAITING) {
        drained.run();
      }
    } catch (IOException | IllegalStateException e) {
      close();
    }
  }

  void close() {
    if (leave()) {
      finished.complete(null);
    }
  }

  /** The server has ended the answer already: nothing is left of it to touch. */
  boolean leave() {
    boolean first = gone.compareAndSet(false, true);
    if (first) {
      left.run();
    }
    return first;
  }
}
