package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Shot;
import castwell.capture.store.Tags.Tagging;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A shot's tags are corrected: the verdict follows, the history stays. No outside source. */
class RetagTest {
  @TempDir Path folder;

  private RangeBench bench;

  /** One arrow of 0.72 m, tagged with nothing. */
  @BeforeEach
  void shoot() {
    bench = RangeBench.in(folder);
    bench.commands().bows().add("ash", Instant.EPOCH, 220, 0.70, "");
    bench
        .commands()
        .arrows()
        .add("fits", 0.030, Measures.<ArrowMeasure>none().with(ArrowMeasure.LENGTH, 0.73));
    bench
        .commands()
        .arrows()
        .add("short", 0.030, Measures.<ArrowMeasure>none().with(ArrowMeasure.LENGTH, 0.60));
    bench.commands().arrows().add("unmeasured", 0.030, Measures.none());
    HandFedStation lane = new HandFedStation(bench, "lane");
    lane.plugIn(0);
    lane.identity(1000, 7);
    lane.beat(2000, 7, 0);
    lane.arrow(1_000_000, 7, 1);
    lane.passTimeUntil(2_000_000);
  }

  @AfterEach
  void end() {
    bench.close();
  }

  private Shot shot() {
    return bench.shots("lane").get(0);
  }

  private void retag(String arrow, String why) {
    bench.commands().retag(shot().shotId(), Optional.of("ash"), Optional.of(arrow), "me", why);
  }

  @Test
  void theLengthIsJudgedByTheArrowTagged() {
    assertThat(shot().counts()).isTrue();
    retag("short", "slip");
    assertThat(shot().counts()).isFalse();
    assertThat(shot().figure().verdict()).isEqualTo("not-the-tagged-length");
    assertThat(shot().reasons().toString()).contains("0.72").contains("0.6000 m");
    retag("fits", "slip again");
    assertThat(shot().counts()).isTrue();
    retag("unmeasured", "");
    assertThat(shot().counts()).isTrue();
    assertThat(shot().bow().orElseThrow().bow()).isEqualTo("ash");
  }

  @Test
  void theHistoryStays() {
    retag("short", "slip");
    retag("fits", "slip again");
    List<Tagging> history = bench.store().read(t -> t.tags().history(shot().passageId()));
    assertThat(history)
        .extracting(t -> t.arrow().orElse("-") + " " + t.taggedBy() + " " + t.why())
        .containsExactly("- capture ", "short me slip", "fits me slip again");
  }

  @Test
  void anArrowMeasuredAnewIsJudgedAnew() {
    retag("short", "");
    assertThat(shot().counts()).isFalse();
    bench
        .commands()
        .arrows()
        .enter("short", 0.030, Measures.<ArrowMeasure>none().with(ArrowMeasure.LENGTH, 0.71));
    assertThat(shot().counts()).isTrue();
  }

  @Test
  void whatDoesNotExistIsRefused() {
    String id = shot().shotId();
    Commands commands = bench.commands();
    assertThatThrownBy(() -> commands.retag(id, Optional.of("yew"), Optional.empty(), "me", ""))
        .isInstanceOf(Refused.class)
        .hasMessage("refused.no_bow|yew");
    assertThatThrownBy(() -> commands.retag("x.1.1", Optional.empty(), Optional.empty(), "me", ""))
        .isInstanceOf(Refused.class)
        .hasMessage("refused.no_shot|x.1.1");
    List<Tagging> history = bench.store().read(t -> t.tags().history(shot().passageId()));
    assertThat(history).hasSize(1);
  }
}
