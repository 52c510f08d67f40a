package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import java.util.List;
import org.junit.jupiter.api.Test;

class BoardRestartedTest {

  @Test
  void whatWasCutOffIsNotCalledMissing() {
    Passage cut = new Passage(Passages.edges("AB0 BB26667"), List.of(), true);
    Passage oneGateOnly = new Passage(Passages.edges("AB0"), List.of(), true);

    assertThat(Bench.codes(cut)).containsExactly("board-restarted");
    assertThat(Bench.codes(oneGateOnly)).containsExactly("board-restarted");
    assertThat(Bench.told(cut)).isEqualTo("verdict.board_restarted");
  }
}
