package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.rehearsal.RehearsalSettings;
import castwell.capture.store.Decisions.Decided;
import java.lang.management.BufferPoolMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A thousand live views, fifty of which never read: shots are captured and stored as ever and reach
 * all others, and how soon is printed. Others in number: {@code -Dcastwell.readers=}.
 */
@Tag("slow")
@Timeout(300)
class ManyReadersTest {
  private static final int READERS = Integer.getInteger("castwell.readers", 1000);
  private static final int STUCK = READERS / 20;
  private static final int SHOTS = 8;
  private static final long MEGABYTE = 1 << 20;

  @TempDir Path folder;

  @Test
  void shotsReachAllThatRead() throws Exception {
    RehearsalSettings board = new RehearsalSettings(1, "rehearsal-1", 0, 0.5, 0.5, 0.006, 0.1);
    try (Served served = Served.rehearsal(folder, board, 0);
        FeedCrowd crowd = new FeedCrowd(served.httpPort())) {
      long begun = lastEvent(served);
      giveThemMoreToReadThanTheyHaveRoomFor(served);
      long before = memory();
      crowd.joinAndNeverRead(STUCK, begun);
      crowd.join(READERS - STUCK, lastEvent(served));
      Until.holds("all in", () -> crowd.answered() == READERS - STUCK);

      // The first one meets code that never ran yet, and readers that still come in.
      hearing(crowd, watchEvents(served, 1));
      Map<Long, Long> stored = watchEvents(served, SHOTS);

      List<Long> millis = hearing(crowd, stored);
      System.out.printf("heard by all after %s ms%n", millis);
      long grown = memory() - before;
      System.out.printf("%d readers: %d MB more%n", READERS, grown / MEGABYTE);
      assertThat(grown).isLessThan(96 * MEGABYTE);
    }
  }

  /** What one of them leaves in the kernel and in its queue, several times over. */
  private static void giveThemMoreToReadThanTheyHaveRoomFor(Served served) {
    Until.holds("a shot", () -> !shotId(served).isEmpty());
    String id = shotId(served);
    for (int i = 0; i < 600; i++) {
      served.commands().decide(id, Decided.SET_ASIDE, i + "界".repeat(450), "test");
    }
  }

  private static String shotId(Served served) {
    return Asked.get(served.at("/api/range")).json().at("/last/shot_id").asText();
  }

  private static long lastEvent(Served served) {
    return served.store().<Long>read(t -> t.feed().last());
  }

  /** How many milliseconds each took from the store to the last that reads. */
  private static List<Long> hearing(FeedCrowd crowd, Map<Long, Long> stored) {
    List<Long> millis = new ArrayList<>();
    for (Map.Entry<Long, Long> event : stored.entrySet()) {
      Until.holds(
          "event " + event.getKey() + " heard by all",
          () -> crowd.heard(event.getKey()).by() == READERS - STUCK);
      long took = crowd.heard(event.getKey()).lastNanos() - event.getValue();
      millis.add(TimeUnit.NANOSECONDS.toMillis(took));
    }
    return millis;
  }

  /** The next events of the feed, each with when it was seen to be in the store. */
  private static Map<Long, Long> watchEvents(Served served, int count) {
    Map<Long, Long> stored = new TreeMap<>();
    long last = lastEvent(served);
    while (stored.size() < count) {
      long known = last;
      Until.holds("another shot", () -> lastEvent(served) > known);
      long now = System.nanoTime();
      last = lastEvent(served);
      for (long event = known + 1; event <= last; event++) {
        stored.put(event, now);
      }
    }
    return stored;
  }

  /** On the heap, and beside it. */
  private static long memory() {
    System.gc();
    return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed()
        + ManagementFactory.getPlatformMXBeans(BufferPoolMXBean.class).stream()
            .mapToLong(BufferPoolMXBean::getMemoryUsed)
            .sum();
  }
}
