package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.wording.Phrase;
import castwell.capture.command.Refused;
import castwell.capture.store.Decisions.Decided;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A person decides otherwise than the rules. Nothing is deleted. No outside source. */
class SetAsideTest {
  @TempDir Path folder;

  private RangeBench bench;

  /** One clean shot, and one whose gate B front was never seen. */
  @BeforeEach
  void shoot() {
    bench = RangeBench.in(folder);
    HandFedStation lane = new HandFedStation(bench, "lane");
    lane.plugIn(0);
    lane.identity(1000, 7);
    lane.beat(2000, 7, 0);
    lane.arrow(1_000_000, 7, 1);
    lane.edgeOfArrow(3_000_500, 7, 5, 0, 3_000_000);
    lane.edgeOfArrow(3_012_500, 7, 4, 2, 3_000_000);
    lane.edgeOfArrow(3_022_500, 7, 4, 3, 3_000_000);
    lane.passTimeUntil(4_000_000);
  }

  @AfterEach
  void end() {
    bench.close();
  }

  private Shot shot(int which) {
    return bench.shots("lane").get(which);
  }

  private void decide(int which, Decided decided, String reason) {
    bench.commands().decide(shot(which).shotId(), decided, reason, "me");
  }

  @Test
  void asideAndBackToTheRule() {
    double speed = shot(0).figure().speedMps().orElseThrow();
    decide(0, Decided.SET_ASIDE, "plucked");
    assertThat(shot(0).counts()).isFalse();
    assertThat(shot(0).reasons())
        .containsExactly(Phrase.of("verdict.set_aside_because", "plucked"));
    assertThat(shot(0).figure().speedMps()).hasValue(speed);
    decide(0, Decided.AS_JUDGED, "");
    assertThat(shot(0).counts()).isTrue();
    assertThat(shot(0).reasons()).isEmpty();
  }

  @Test
  void broughtBackAndBackToTheRule() {
    assertThat(shot(1).counts()).isFalse();
    Phrase rule = shot(1).reasons().get(0);
    decide(1, Decided.BROUGHT_BACK, "I saw it");
    assertThat(shot(1).counts()).isTrue();
    assertThat(shot(1).reasons())
        .containsExactly(Phrase.of("verdict.brought_back_because", "I saw it"), rule);
    decide(1, Decided.AS_JUDGED, "");
    assertThat(shot(1).counts()).isFalse();
    assertThat(shot(1).reasons()).containsExactly(rule);
  }

  @Test
  void everyDecisionStays() {
    decide(0, Decided.SET_ASIDE, "plucked");
    decide(0, Decided.BROUGHT_BACK, "no, clean");
    decide(0, Decided.AS_JUDGED, "");
    List<Shot.Decision> history =
        bench.store().read(t -> t.decisions().history(shot(0).passageId()));
    assertThat(history)
        .extracting(d -> d.decided() + " " + d.reason() + " " + d.by())
        .containsExactly("SET_ASIDE plucked me", "BROUGHT_BACK no, clean me", "AS_JUDGED  me");
  }

  /** Gates measured anew change speeds and verdicts, never what a person said. */
  @Test
  void aDecisionOutlivesARecalibration() {
    decide(0, Decided.SET_ASIDE, "plucked");
    bench.commands().calibrate("lane", shot(0).fired(), RangeBench.GATES, "me");
    assertThat(shot(0).counts()).isFalse();
  }

  @Test
  void aReasonIsNeeded() {
    for (Decided decided : new Decided[] {Decided.SET_ASIDE, Decided.BROUGHT_BACK}) {
      assertThatThrownBy(() -> decide(0, decided, "  "))
          .isInstanceOf(Refused.class)
          .hasMessage("refused.no_reason");
    }
    assertThat(shot(0).counts()).isTrue();
  }
}
