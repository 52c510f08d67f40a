package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.wording.Phrase;
import castwell.capture.store.Feed;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An edge arrives when its passage has long been judged. Common practice, no source. */
class LateEdgeTest {
  @TempDir Path folder;

  private RangeBench bench;
  private HandFedStation lane;

  @AfterEach
  void end() {
    bench.close();
  }

  @BeforeEach
  void begin() {
    bench = RangeBench.in(folder);
    lane = new HandFedStation(bench, "lane");
    lane.plugIn(100_000);
    lane.identity(110_000, 7);
    lane.beat(120_000, 7, 0);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void theSameShotCountsNow(int late) {
    for (int i = 0; i < 4; i++) {
      if (i != late) {
        lane.edgeOfArrow(1_000_000 + 3000 * i, 7, 1, i, 1_000_000);
      }
    }
    lane.beat(1_500_000, 7, 4);
    lane.passTimeUntil(2_500_000);
    Shot judged = only();
    assertThat(judged.counts()).isFalse();
    assertThat(judged.byGates().orElseThrow().firstEdge()).isEqualTo(1);
    assertThat(judged.reasons())
        .containsExactly(Phrase.of("verdict.lost_edge", String.valueOf(late + 1)));
    long told = bench.store().read(t -> t.feed().last());

    lane.edgeOfArrow(3_000_000, 7, 1, late, 1_000_000);
    lane.passTimeUntil(4_000_000);
    Shot amended = only();
    assertThat(amended.counts()).isTrue();
    assertThat(amended.shotId()).isEqualTo(judged.shotId());
    // 0.6096 m in 20000 ticks of 2 MHz
    assertThat(amended.figure().speedMps().orElseThrow()).isCloseTo(60.96, within(1e-9));
    List<Feed.Item> news = bench.store().read(t -> t.feed().after(told, 10));
    assertThat(news)
        .extracting(Feed.Item::kind, Feed.Item::passageId)
        .contains(tuple(Feed.Kind.SHOT, OptionalLong.of(amended.passageId())));
  }

  /** Two halves that were judged one by one turn out to be one arrow. */
  @Test
  void halvesBecomeOneShot() {
    lane.edgeOfArrow(1_000_000, 7, 1, 0, 1_000_000);
    lane.passTimeUntil(1_600_000);
    assertThat(only().counts()).isFalse();
    for (int i = 1; i < 4; i++) {
      lane.edgeOfArrow(2_000_000, 7, 1, i, 1_000_000);
    }
    lane.passTimeUntil(3_000_000);
    assertThat(only().counts()).isTrue();
  }

  private Shot only() {
    assertThat(bench.shots("lane")).hasSize(1);
    return bench.shots("lane").get(0);
  }
}
