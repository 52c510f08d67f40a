package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.reading.Part;
import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import castwell.analysis.speed.Flight;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where fletching sits and how often it flutters: common practice, no source. */
class FlutterTest {
  private final Flight arrow = Flight.ARROW;

  @Test
  void nearTheTailIsFletching() {
    assertThat(Bench.codes(fluttering(1, 0.15))).isEmpty();
    assertThat(Bench.codes(fluttering(8, 0.15))).isEmpty();
  }

  /** Long feathers let light through again and again. */
  @Test
  void eighteenEdgesOfItToo() {
    assertThat(Bench.codes(fluttering(9, 0.15))).isEmpty();
  }

  @Test
  void lightFarFromTheTailIsNotTheTail() {
    Assessment assessment = Bench.assess(fluttering(1, 0.25));

    assertThat(assessment.verdict().counts()).isTrue();
    assertThat(assessment.reading().parts().values()).filteredOn(Part.LIGHT::equals).hasSize(2);
  }

  @Test
  void aBounceJustAfterTheTailAndTwoOfAKindAreTolerated() {
    List<Edge> edges = new ArrayList<>(arrow.passage().edges());
    edges.add(new Edge(1, Gate.A, EdgeKind.CLEAR, arrow.ticks(0.73), 0));
    edges.add(new Edge(1, Gate.A, EdgeKind.BLOCKED, arrow.ticks(0.75), 0));

    assertThat(Bench.codes(Passages.stamped(edges))).isEmpty();
  }

  private Passage fluttering(int times, double beforeTailM) {
    List<Edge> edges = new ArrayList<>(arrow.passage().edges());
    for (int i = 0; i < times; i++) {
      double clearM = arrow.lengthM() - beforeTailM + 0.01 * i;
      edges.add(new Edge(1, Gate.A, EdgeKind.CLEAR, arrow.ticks(clearM), 0));
      edges.add(new Edge(1, Gate.A, EdgeKind.BLOCKED, arrow.ticks(clearM + 0.005), 0));
    }
    return Passages.stamped(edges);
  }
}
