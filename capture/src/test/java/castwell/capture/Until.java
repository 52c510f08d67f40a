package castwell.capture;

import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** Waits for what another thread or process does. */
public final class Until {
  /** No test is about how long something takes: this only ends one that would wait for ever. */
  public static final Duration PATIENCE = Duration.ofSeconds(120);

  private Until() {}

  public static void holds(String what, BooleanSupplier condition) {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > deadline) {
        throw new AssertionError("waited " + PATIENCE + " in vain for " + what);
      }
      LockSupport.parkNanos(2_000_000);
    }
  }
}
