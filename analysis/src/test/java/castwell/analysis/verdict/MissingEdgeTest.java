package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MissingEdgeTest {

  @Test
  void saysWhichGateMissedWhichEnd() {
    assertThat(Bench.codes("BB26667 AC32371 BC59038")).containsExactly("missing-edge");
    assertThat(Bench.sentence("BB26667 AC32371 BC59038")).isEqualTo("Gate A never saw its front.");
    assertThat(Bench.sentence("AB0 BB26667 AC32371")).isEqualTo("Gate B never saw its tail.");
    assertThat(Bench.sentence("AB0 BC59038"))
        .isEqualTo("Gate A never saw its tail; Gate B never saw its front.");
  }
}
