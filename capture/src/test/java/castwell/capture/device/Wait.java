package castwell.capture.device;

import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for something that another thread or the system does. */
public final class Wait {
  private Wait() {}

  public static void until(String what, Duration atMost, BooleanSupplier condition) {
    long deadline = System.nanoTime() + atMost.toNanos();
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > deadline) {
        throw new AssertionError("waited " + atMost + " in vain for " + what);
      }
      LockSupport.parkNanos(1_000_000);
    }
  }
}
