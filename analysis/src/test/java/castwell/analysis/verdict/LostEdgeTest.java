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
    assertThat(Bench.sentence(passage)).isEqualTo("On the way from the board, edge 5 was lost.");
  }

  @Test
  void spoilsEvenACompletePassage() {
    Passage passage =
        new Passage(Passages.edges("1:AB0 2:BB26667 3:AC32371 6:BC59038"), List.of(4, 5), false);

    assertThat(Bench.codes(passage)).containsExactly("lost-edges");
    assertThat(Bench.sentence(passage))
        .isEqualTo("On the way from the board, edges 4 and 5 were lost.");
  }

  @Test
  void allOfThemLostIsStillAPassage() {
    Passage passage = new Passage(List.of(), IntStream.rangeClosed(11, 18).boxed().toList(), false);

    assertThat(Bench.codes(passage)).containsExactly("lost-edges");
    assertThat(Bench.sentence(passage))
        .isEqualTo("On the way from the board, 8 edges from 11 to 18 were lost.");
  }
}
