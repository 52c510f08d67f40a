package castwell.web;

import castwell.analysis.Seed;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The daemon killed again and again, at any moment, while the board goes on shooting: every passage
 * is in the store once, and at a subscriber once by its id. With <code>-Dcastwell.kills=200</code>
 * it takes some ten minutes.
 */
@Timeout(value = 40, unit = TimeUnit.MINUTES)
@Tag("broker")
class KilledDaemonTest {
  private static final int KILLS = Integer.getInteger("castwell.kills", 5);

  @TempDir Path folder;

  @Test
  void everyPassageIsOnceInTheStoreAndOnceByItsIdAtASubscriber() throws Exception {
    long seed = Seed.of(KilledDaemonTest.class);
    System.out.println("KilledDaemonTest seed " + seed + ", kills " + KILLS);
    Random random = new Random(seed);
    Path data = folder.resolve("data");
    try (HarriedRange range = new HarriedRange(folder.resolve("broker"), seed)) {
      range.configure(data);
      for (int i = 0; i < KILLS; i++) {
        try (Program daemon = range.start(data)) {
          range.letLiveForAWhile(daemon, data, random, address -> {});
          daemon.kill();
        }
      }
      range.allIsThereInTheEnd(data);
    }
  }
}
