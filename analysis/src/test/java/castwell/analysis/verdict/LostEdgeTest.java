package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LostEdgeTest {

  @Test
  void isNamedAndNotCalledUnseen() {
    Passage passage =
        new Passage(Passages.edges("6:BB26667 7:AC32371 8:BC59038"), List.of(5), false);

    assertThat(Bench.codes(passage)).containsExactly("lost-edges");
    assertThat(Bench.told(passage)).isEqualTo("verdict.lost_edge|5");
  }

  @Test
  void spoilsEvenACompletePassage() {
    Passage passage =
        new Passage(Passages.edges("1:AB0 2:BB26667 3:AC32371 6:BC59038"), List.of(4, 5), false);

    assertThat(Bench.codes(passage)).containsExactly("lost-edges");
    assertThat(Bench.told(passage)).isEqualTo("verdict.lost_edges|4, 5");
  }

  /** An insect's edge before the arrow was lost; the arrow has all of its own. */
  @Test
  void besideAnArrowSpoilsNothing() {
    String arrow = " 3:AB200000 4:BB226667 5:AC232371 6:BC259038";
    Passage passage = new Passage(Passages.edges("1:AB180000" + arrow), List.of(2), false);

    assertThat(Bench.codes(passage)).isEmpty();
  }

  /** The lost edge may be the very end that an arrow lacks. */
  @Test
  void isToldBeforeAMissingEnd() {
    Passage passage = new Passage(Passages.edges("1:AB0 2:BB26667 3:AC32371"), List.of(4), false);

    assertThat(Bench.codes(passage)).containsExactly("lost-edges");
  }

  @Test
  void allOfThemLostIsStillAPassage() {
    Passage passage = new Passage(List.of(), IntStream.rangeClosed(11, 18).boxed().toList(), false);

    assertThat(Bench.codes(passage)).containsExactly("lost-edges");
    assertThat(Bench.told(passage)).isEqualTo("verdict.lost_many|8|11|18");
  }
}
