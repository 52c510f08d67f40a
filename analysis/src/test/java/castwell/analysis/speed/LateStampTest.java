package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import castwell.analysis.uncertainty.Kind;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LateStampTest {
  private static final int LATE_TICKS = 20;
  private final Flight arrow = Flight.ARROW;

  /** Each stamp late by nothing or by all that it says it may be, in all 16 ways. */
  @Test
  void worstCaseMovesTheSpeedByNoMoreThanTheBoundOfOneStamp() {
    double intervalTicks = arrow.ticks(Flight.SPACING_M);
    for (int which = 0; which < 16; which++) {
      assertThat(arrow.relativeError(late(which)))
          .as("stamps late: " + Integer.toBinaryString(which))
          .isCloseTo(0, within((LATE_TICKS + 1) / (intervalTicks - LATE_TICKS - 1)));
    }
  }

  @Test
  void latenessAddsToTheOwnUncertaintyOnly() {
    var flagged = arrow.measure(late(0)).speed().orElseThrow();
    var prompt = arrow.measure(arrow.passage()).speed().orElseThrow();
    double v = arrow.speedMps();
    // Four stamps, the mean of two pairs: u^2 = v^2 (2 L^2 / 12) / (2 ticks^2), JCGM 100:2008
    // 5.1.2.
    double added = v * LATE_TICKS / Math.sqrt(12) / arrow.ticks(Flight.SPACING_M);

    assertThat(flagged.standardUncertainty(Kind.OWN))
        .isCloseTo(Math.hypot(prompt.standardUncertainty(Kind.OWN), added), within(1e-6));
    assertThat(flagged.standardUncertainty(Kind.COMMON))
        .isCloseTo(prompt.standardUncertainty(Kind.COMMON), within(1e-12));
  }

  @Test
  void oneGatesLatenessIsTakenOffByHalfItsBound() {
    List<Edge> edges = new ArrayList<>();
    for (Edge e : arrow.passage().edges()) {
      boolean flagged = e.number() == 1;
      edges.add(
          new Edge(
              e.number(),
              e.gate(),
              e.kind(),
              e.ticks() + (flagged ? LATE_TICKS / 2 : 0),
              flagged ? LATE_TICKS : 0));
    }

    assertThat(arrow.relativeError(Passage.of(edges))).isCloseTo(0, within(2e-5));
  }

  /** A gate whose stamps are late by construction: the host is told how late, and subtracts. */
  @Test
  void latencyByConstructionIsSubtracted() {
    StampLatency latency = new StampLatency(-1e-6, 2.5e-6);
    List<Edge> edges = new ArrayList<>();
    for (Edge e : arrow.passage().edges()) {
      long shift = Math.round(latency.seconds(e.gate()) * Flight.HZ);
      edges.add(new Edge(e.number(), e.gate(), e.kind(), e.ticks() + shift, 0));
    }
    Passage shifted = Passage.of(edges);
    var corrected = SpeedMeter.measure(shifted, Flight.CALIBRATION, Flight.RATE, latency);

    assertThat(corrected.speed().orElseThrow().value())
        .isCloseTo(arrow.measure(arrow.passage()).speed().orElseThrow().value(), within(1e-10));
  }

  private Passage late(int which) {
    List<Edge> edges = new ArrayList<>();
    for (Edge e : arrow.passage().edges()) {
      boolean isLate = (which >> (e.number() - 1) & 1) == 1;
      edges.add(
          new Edge(
              e.number(), e.gate(), e.kind(), e.ticks() + (isLate ? LATE_TICKS : 0), LATE_TICKS));
    }
    return Passage.of(edges);
  }
}
