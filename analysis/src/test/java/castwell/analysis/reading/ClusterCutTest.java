package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.reading.ClusterCut.Open;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passages;
import castwell.analysis.speed.Flight;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Of 609.6 mm between the gates; ticks are half microseconds. */
class ClusterCutTest {
  private static final ClusterCut CUT =
      new ClusterCut(Flight.SPACING_M, Limits.defaults(), ClusterCut.USUAL_QUIET_S);

  /** (1.5 m - 0.5 m) / 20 m/s between the gates, and 3 ms to spare: by reasoning. */
  @Test
  void isQuietForLongerThanTheSlowestArrowIsBetweenTheGates() {
    assertThat(CUT.quietS()).isEqualTo(0.010);
    assertThat(new ClusterCut(1.5, Limits.defaults(), ClusterCut.USUAL_QUIET_S).quietS())
        .isCloseTo(0.053, within(1e-9));
  }

  @Test
  void anArrowIsOneClusterAndWhatComesBeforeItAnother() {
    String arrow = " AB100000 BB124384 AC129600 BC153984";

    assertThat(cut("BB50000 BC56000" + arrow)).containsExactly(2, 4);
    assertThat(cut("BB90000 BC96000" + arrow)).containsExactly(6);
    assertThat(cut("AB79999 AC79999" + arrow)).containsExactly(2, 4);
  }

  @Test
  void aloneGateAWaitsForASlowObjectAndGateBForNone() {
    assertThat(cut("AB0 AC2000 BB400000 BC402000")).containsExactly(4);
    assertThat(cut("AB0 AC2000 BB502001 BC504000")).containsExactly(2, 2);
    assertThat(cut("BB0 BC2000 AB22001 AC24000")).containsExactly(2, 2);
    assertThat(cut("AB0 AC2000 AB22001 AC24000")).containsExactly(2, 2);
  }

  @Test
  void aGateThatStaysBlockedIsWaitedForButNotForLong() {
    assertThat(cut("AB0 BB1000 BC2000 AC400000")).containsExactly(4);
    assertThat(cut("AB0 BB1000 BC2000 AC403000")).containsExactly(3, 1);
    assertThat(cut("AB0 AC500000")).containsExactly(2);
    assertThat(cut("AB0 AC501000")).containsExactly(1, 1);
  }

  @Test
  void aGateThatWasBlockedBeforeIsNotWaitedFor() {
    assertThat(cut("AC0 BB1000 BC3000 AB24000 AC30000")).containsExactly(3, 2);
  }

  @Test
  void whatGoesOnForMoreThanASecondIsCut() {
    StringBuilder lamp = new StringBuilder();
    for (int i = 0; i < 150; i++) {
      lamp.append(" AB").append(i * 20_000).append(" AC").append(i * 20_000 + 14_000);
    }

    assertThat(cut(lamp.toString())).containsExactly(201, 99);
  }

  @Test
  void saysHowLongTheLastClusterStaysOpen() {
    assertThat(closesAfter("AB0")).isEqualTo(ClusterCut.A_ALONE_S);
    assertThat(closesAfter("AB0 BB10 AC20")).isEqualTo(0.2);
    assertThat(closesAfter("AB0 AC10")).isEqualTo(ClusterCut.A_ALONE_S);
    assertThat(closesAfter("BB0 BC10")).isEqualTo(CUT.quietS());
    assertThat(closesAfter("AB0 AC10 BG20")).isEqualTo(0.2); // it may have left B blocked
  }

  private static double closesAfter(String edges) {
    Open open = null;
    for (Edge edge : Passages.edges(edges)) {
      open = open == null ? Open.begin(edge) : open.with(edge);
    }
    return CUT.closesAfterS(open);
  }

  private static Stream<Integer> cut(String edges) {
    return Clusters.of(CUT, Passages.edges(edges), Flight.HZ).stream().map(List::size);
  }
}
