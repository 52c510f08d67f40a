package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.announce.Announcer;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.Decisions.Decided;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Whoever is told finds it on the disk, over a connection of its own. The project's own rule, no
 * source.
 */
class CommitBeforeTellingTest {
  @TempDir Path folder;

  private static final class Told implements Announcer.Listener {
    private final Supplier<List<String>> look;
    private final List<List<String>> found = new ArrayList<>();

    Told(Supplier<List<String>> look) {
      this.look = look;
    }

    @Override
    public void fedMore() {
      found.add(look.get());
    }

    @Override
    public void linkChanged(LinkState state) {}

    @Override
    public void storeChanged(StoreState state) {}
  }

  @Test
  void theShotIsThereWhenItIsAnnounced() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = new HandFedStation(bench, "lane");
      lane.plugIn(0);
      lane.identity(1000, 7);
      lane.beat(2000, 7, 0);
      Told told =
          new Told(
              () ->
                  bench
                      .tables()
                      .query(
                          """
                          SELECT shot_id, clean, (SELECT count(*) FROM edge),
                            (SELECT count(*) FROM feed WHERE feed.passage_id = passage.id)
                          FROM passage JOIN figure ON figure.passage_id = passage.id"""));
      bench.announcer().add(told);
      lane.arrow(1_000_000, 7, 1);
      lane.passTimeUntil(1_500_000);
      assertThat(told.found).containsExactly(List.of("gate-1.7.1,1,4,1"));
    }
  }

  @Test
  void aDecisionIsThereWhenItIsAnnounced() {
    try (RangeBench bench = RangeBench.in(folder)) {
      HandFedStation lane = new HandFedStation(bench, "lane");
      lane.plugIn(0);
      lane.identity(1000, 7);
      lane.beat(2000, 7, 0);
      lane.arrow(1_000_000, 7, 1);
      lane.passTimeUntil(1_500_000);
      Told told = new Told(() -> bench.tables().query("SELECT decided, reason FROM decision"));
      bench.announcer().add(told);
      bench.commands().decide("gate-1.7.1", Decided.SET_ASIDE, "plucked", "me");
      assertThat(told.found).containsExactly(List.of("SET_ASIDE,plucked"));
    }
  }
}
