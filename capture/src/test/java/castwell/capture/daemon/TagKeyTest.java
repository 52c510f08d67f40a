package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.measure.Measures;
import castwell.capture.store.Rack;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The board's key 1: short takes the next arrow, long the next bow. Board protocol, K. */
class TagKeyTest {
  @TempDir Path folder;

  private RangeBench bench;
  private HandFedStation lane;
  private long micros = 1_000_000;
  private int edges;

  @BeforeEach
  void begin() {
    bench = RangeBench.in(folder);
    for (String bow : new String[] {"ash", "yew"}) {
      bench.commands().bows().add(bow, Instant.EPOCH, 220, 0.70, "");
    }
    for (String arrow : new String[] {"one", "two", "three"}) {
      bench.commands().arrows().add(arrow, 0.030, Measures.none());
    }
    lane = new HandFedStation(bench, "lane");
    lane.plugIn(0);
    lane.identity(1000, 7);
    lane.beat(2000, 7, 0);
  }

  @AfterEach
  void end() {
    bench.close();
  }

  private void press(int key, char how) {
    lane.say(micros, "K,7,%d,%c,%d".formatted(key, how, 2 * micros));
    micros += 500_000;
  }

  /** Bow and arrow of a shot fired now. */
  private String shoot() {
    lane.arrow(micros, 7, edges + 1);
    edges += 4;
    micros += 1_000_000;
    lane.passTimeUntil(micros);
    Shot shot = bench.store().read(t -> t.shots().last("lane")).orElseThrow();
    return shot.bow().map(Rack.BowState::bow).orElse("-")
        + " "
        + shot.arrow().map(Rack.Arrow::name).orElse("-");
  }

  @Test
  void aShortPressTakesTheNextArrow() {
    assertThat(shoot()).isEqualTo("- -");
    for (String arrow : new String[] {"one", "two", "three", "one"}) {
      press(1, 'S');
      assertThat(shoot()).isEqualTo("- " + arrow);
    }
  }

  @Test
  void aLongPressTakesTheNextBowAndKeepsTheArrow() {
    press(1, 'S');
    for (String bow : new String[] {"ash", "yew", "ash"}) {
      press(1, 'L');
      assertThat(shoot()).isEqualTo(bow + " one");
    }
  }

  @Test
  void tagsHoldUntilChangedAndOtherKeysDoNothing() {
    press(1, 'S');
    press(2, 'S');
    press(9, 'L');
    assertThat(shoot()).isEqualTo("- one");
    assertThat(shoot()).isEqualTo("- one");
  }

  @Test
  void shotsBeforeThePressKeepTheirTags() {
    press(1, 'S');
    shoot();
    press(1, 'S');
    shoot();
    assertThat(bench.shots("lane"))
        .extracting(shot -> shot.arrow().orElseThrow().name())
        .containsExactly("one", "two");
  }
}
