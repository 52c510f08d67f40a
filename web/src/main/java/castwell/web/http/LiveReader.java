package castwell.web.http;

import jakarta.servlet.ServletOutputStream;
import jakarta.servlet.WriteListener;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
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
  private final LongSupplier nanos;
  private final Queue<byte[]> waiting = new ArrayDeque<>();
  private boolean unflushed;
  private boolean started;
  private final CompletableFuture<Void> gone = new CompletableFuture<>();
  private volatile long lastProgressNanos;

  /** The last feed item put into the queue; kept by the feed's thread. */
  private long place;

  /**
   * @param place the last feed item it knows
   * @param light whether each heartbeat's light is told too
   * @param drained called when there is room again
   * @param nanos a monotonic clock
   */
  LiveReader(
      ServletOutputStream out, long place, boolean light, Runnable drained, LongSupplier nanos) {
    this.light = light;
    this.out = out;
    this.place = place;
    this.drained = drained;
    this.nanos = nanos;
    this.lastProgressNanos = nanos.getAsLong();
  }

  boolean wantsLight() {
    return light;
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
    return gone.isDone();
  }

  CompletableFuture<Void> gone() {
    return gone;
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
    gone.complete(null);
  }
}
