package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import castwell.analysis.speed.Flight;
import castwell.analysis.speed.StampLatency;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Two arrows of 50 m/s and 0.74 m, of which the second comes 36 ms after the first. */
class SeparationTest {
  private static final Knowledge KNOWLEDGE = Knowledge.of(Flight.CALIBRATION, Limits.defaults());
  private static final String FIRST = "1:AB20000 2:BB44384 3:AC49600 4:BC73984";

  @Test
  void eachArrowIsAPassage() {
    List<Passage> passages = separate(FIRST + " 5:AB92000 6:BB116384 7:AC121600 8:BC145984");

    assertThat(numbers(passages)).containsExactly(List.of(1, 2, 3, 4), List.of(5, 6, 7, 8));
  }

  @Test
  void theirEdgesMayTakeTurns() {
    List<Passage> passages =
        separate(
            "1:AB20000 2:BB44384 3:AC49600 4:AB56000 5:BC73984 6:BB80384 7:AC85600 8:BC109984");

    assertThat(numbers(passages)).containsExactly(List.of(1, 2, 3, 5), List.of(4, 6, 7, 8));
  }

  @Test
  void anInsectGoesToTheNearer() {
    String insects = " 5:AB55000 6:AC58000 7:BB105000 8:BC108000";
    List<Passage> passages =
        separate(FIRST + insects + " 9:AB92000 10:BB116384 11:AC121600 12:BC145984");

    assertThat(numbers(passages))
        .containsExactly(List.of(1, 2, 3, 4, 5, 6), List.of(7, 8, 9, 10, 11, 12));
  }

  @Test
  void whatWasLostIsOfEachThatSpansItOrOfTheNearest() {
    String second = " 6:AB92000 8:BB116384 9:AC121600 10:BC145984";
    Passage cluster = new Passage(Passages.edges(FIRST + second), List.of(5, 7), true, true);
    List<Passage> passages =
        Separation.separate(cluster, KNOWLEDGE, Flight.RATE, StampLatency.NONE);

    assertThat(passages.stream().map(Passage::lostEdges)).containsExactly(List.of(5), List.of(7));
    assertThat(passages).allMatch(Passage::boardRestarted).allMatch(Passage::edgesDropped);
  }

  @Test
  void oneArrowAndItsInsectsStayTogether() {
    String insect = " 5:BB80000 6:BC84000 7:AB90000 8:AC91000";

    assertThat(numbers(separate(FIRST + insect))).hasSize(1);
    assertThat(numbers(separate(FIRST))).hasSize(1);
  }

  @Test
  void edgesThatWereAllLostStayOne() {
    Passage lost = new Passage(List.of(), List.of(3, 4), false);

    assertThat(Separation.separate(lost, KNOWLEDGE, Flight.RATE, StampLatency.NONE))
        .containsExactly(lost);
  }

  private static List<Passage> separate(String edges) {
    return Separation.separate(Passages.of(edges), KNOWLEDGE, Flight.RATE, StampLatency.NONE);
  }

  private static Stream<List<Integer>> numbers(List<Passage> passages) {
    return passages.stream().map(p -> p.edges().stream().map(Edge::number).toList());
  }
}
