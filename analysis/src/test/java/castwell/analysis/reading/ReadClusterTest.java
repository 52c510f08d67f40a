package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.shot.Edge;
import castwell.analysis.speed.Ends;
import castwell.analysis.speed.Flight;
import castwell.analysis.speed.MixedSpeed;
import castwell.analysis.speed.StampLatency;
import castwell.analysis.speed.TickRate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Clusters reckoned by an independent program in Python, with the same model; the numbers are in
 * read-clusters.tsv.
 */
class ReadClusterTest {
  private static final TickRate RATE = new TickRate(Flight.HZ, 0);

  static List<ReadCluster> clusters() {
    return ReadCluster.all();
  }

  @ParameterizedTest
  @MethodSource("clusters")
  void isReadAlike(ReadCluster cluster) {
    Reading reading = Reader.read(cluster.passage(), cluster.knowledge(), RATE, StampLatency.NONE);

    assertThat(reading.best().kind()).isEqualTo(cluster.best());
    assertThat(reading.best().costNats()).isCloseTo(cluster.cost(), within(1e-6));
    assertThat(reading.runnerUp().map(StoryTold::kind)).isEqualTo(cluster.runnerUp());
    reading
        .runnerUp()
        .ifPresent(
            next -> assertThat(next.costNats()).isCloseTo(cluster.runnerUpCost(), within(1e-6)));
    assertThat(reading.parts().values()).containsExactlyElementsOf(cluster.parts());
    assertThat(reading.arrows()).hasSameSizeAs(cluster.arrows());
    for (int i = 0; i < reading.arrows().size(); i++) {
      alike(reading.arrows().get(i), cluster.arrows().get(i));
    }
  }

  private static void alike(ArrowRead arrow, ReadCluster.Arrow expected) {
    MixedSpeed speed = arrow.speed();
    List<Double> numbers = expected.numbers();
    assertThat(speed.mps()).isCloseTo(numbers.get(0), within(1e-9));
    assertThat(speed.ownU()).isCloseTo(numbers.get(1), within(1e-6));
    assertThat(speed.lengthM()).isCloseTo(numbers.get(2), within(1e-9));
    assertThat(arrow.marginNats()).isCloseTo(numbers.get(3), within(1e-6));
    assertThat(speed.both()).isCloseTo(numbers.get(4), within(1e-6));
    assertThat(speed.front()).isCloseTo(numbers.get(5), within(1e-6));
    assertThat(speed.tail()).isCloseTo(numbers.get(6), within(1e-6));
    assertThat(numbers(arrow.ends())).containsExactlyElementsOf(expected.edges());
  }

  private static List<String> numbers(Ends ends) {
    return Stream.of(ends.frontA(), ends.frontB(), ends.tailA(), ends.tailB())
        .map(ReadClusterTest::number)
        .toList();
  }

  private static String number(Optional<Edge> edge) {
    return edge.map(e -> String.valueOf(e.number())).orElse("-");
  }
}
