package castwell.capture.rehearsal;

import castwell.capture.device.Link;
import java.io.IOException;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;

/** The connection to a pretended board; each line comes when its last byte would have come. */
final class RehearsalLink implements Link {
  private static final long LONGEST_WAIT_MICROS = 500_000;

  private final RehearsalRange range;
  private final LongSupplier micros;
  private final Runnable onClose;
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();
  private byte[] left = {};
  private boolean closed;

  RehearsalLink(RehearsalRange range, LongSupplier micros, Runnable onClose) {
    this.range = range;
    this.micros = micros;
    this.onClose = onClose;
  }

  @Override
  public int read(byte[] buffer) {
    lock.lock();
    try {
      long now = micros.getAsLong();
      long deadline = now + LONGEST_WAIT_MICROS;
      while (!closed && !fetch(now) && now < deadline) {
        double next = Math.min(deadline, range.nextMicros());
        changed.await((long) Math.ceil(next - now), TimeUnit.MICROSECONDS);
        now = micros.getAsLong();
      }
      return closed ? -1 : take(buffer);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return -1;
    } finally {
      lock.unlock();
    }
  }

  private boolean fetch(long nowMicros) {
    left = left.length > 0 ? left : range.takeDue(nowMicros);
    return left.length > 0;
  }

  private int take(byte[] buffer) {
    int count = Math.min(left.length, buffer.length);
    System.arraycopy(left, 0, buffer, 0, count);
    left = Arrays.copyOfRange(left, count, left.length);
    return count;
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    lock.lock();
    try {
      if (closed) {
        throw new IOException("The rehearsal has ended.");
      }
      range.hear(bytes, micros.getAsLong());
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  @Override
  public void close() {
    lock.lock();
    try {
      if (!closed) {
        closed = true;
        changed.signalAll();
        onClose.run();
      }
    } finally {
      lock.unlock();
    }
  }
}
