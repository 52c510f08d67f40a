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

  @Test
  void allOfThemLostIsStillAPassage() {
    Passage passage = new Passage(List.of(), IntStream.rangeClosed(11, 18).boxed().toList(), false);

    assertThat(Bench.codes(passage)).containsExactly("lost-edges");
    assertThat(Bench.told(passage)).isEqualTo("verdict.lost_many|8|11|18");
  }
}
