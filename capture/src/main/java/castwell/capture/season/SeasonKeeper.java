package castwell.capture.season;

import castwell.capture.announce.Announcer;
import castwell.capture.cell.CellLedger;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.Store;
import castwell.capture.store.StoreUnavailable;
import java.time.ZoneId;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.LoggerFactory;

/**
 * Makes the cells of new shots once the range is quiet for a moment, and then the season, so that
 * pages can read them fast.
 */
public final class SeasonKeeper implements Announcer.Listener, AutoCloseable {
  private static final long QUIET_MS = 1500;

  /** Where somebody shoots without a pause, the cells are made after half a minute all the same. */
  private static final int MOST_WAITS = 20;

  /** Cells that are still unmade when it closes are made at the next start. */
  private final ScheduledThreadPoolExecutor thread =
      new ScheduledThreadPoolExecutor(
          1, work -> new Thread(work, "season"), new ThreadPoolExecutor.DiscardPolicy());

  private final AtomicBoolean isWanted = new AtomicBoolean();
  private final AtomicLong fed = new AtomicLong();
  private final Store store;
  private final ZoneId zone;

  public SeasonKeeper(Store store, ZoneId zone) {
    this.store = store;
    this.zone = zone;
    thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
    fedMore();
  }

  @Override
  public void fedMore() {
    fed.incrementAndGet();
    if (isWanted.compareAndSet(false, true)) {
      await(0);
    }
  }

  private void await(int waits) {
    long before = fed.get();
    thread.schedule(() -> makeIfQuiet(before, waits), QUIET_MS, TimeUnit.MILLISECONDS);
  }

  /**
   * Makes the cells, or waits on if shots came meanwhile, since no shot can be written while cells
   * are. The waiting has its limit.
   */
  private void makeIfQuiet(long before, int waits) {
    if (fed.get() == before || waits >= MOST_WAITS) {
      make();
    } else {
      await(waits + 1);
    }
  }

  private void make() {
    isWanted.set(false);
    try {
      CellLedger.make(store, zone, thread::isShutdown);
      if (!thread.isShutdown()) {
        SeasonLedger.make(store, zone);
      }
    } catch (StoreUnavailable e) {
      LoggerFactory.getLogger(SeasonKeeper.class).debug("cells and season wait for the disk", e);
    } catch (RuntimeException e) {
      // Until then pages read the shots themselves.
      LoggerFactory.getLogger(SeasonKeeper.class).error("cells and season can't be made", e);
    }
  }

  @Override
  public void linkChanged(LinkState state) {}

  @Override
  public void storeChanged(StoreState state) {}

  @Override
  public void close() {
    thread.shutdown();
    try {
      thread.awaitTermination(10, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
