package castwell.web;

import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for what another thread or process does. */
public final class Until {
  private Until() {}

  public static void holds(String what, Duration atMost, BooleanSupplier condition) {
    long deadline = System.nanoTime() + atMost.toNanos();
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > deadline) {
        throw new AssertionError("waited " + atMost + " in vain for " + what);
      }
      LockSupport.parkNanos(2_000_000);
    }
  }
}
