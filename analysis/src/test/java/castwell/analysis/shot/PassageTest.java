package castwell.analysis.shot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class PassageTest {

  @Test
  void frontIsTheFirstBlockedAndTailTheLastClear() {
    Passage passage = Passages.of("AB10 BB20 AC30 AB31 AC32 BC40");

    assertThat(passage.front(Gate.A)).map(Edge::ticks).contains(10L);
    assertThat(passage.tail(Gate.A)).map(Edge::ticks).contains(32L);
  }

  @Test
  void aMergedStampIsNeitherFrontNorTail() {
    Passage passage = Passages.of("AG10 AC30");

    assertThat(passage.front(Gate.A)).isEmpty();
  }

  @Test
  void lostEdgesCountForItsName() {
    Passage passage = new Passage(Passages.edges("6:BB20 7:AC30"), List.of(5, 8), false);

    assertThat(passage.firstEdge()).isEqualTo(5);
    assertThat(passage.lastEdge()).isEqualTo(8);
  }

  @Test
  void nothingIsNoPassage() {
    assertThatThrownBy(() -> Passage.of(List.of())).isInstanceOf(IllegalArgumentException.class);
  }
}
