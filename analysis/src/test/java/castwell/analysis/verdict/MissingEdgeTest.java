package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MissingEdgeTest {

  @Test
  void saysWhichGateMissedWhichEnd() {
    assertThat(Bench.codes("BB26667 AC32371 BC59038")).containsExactly("missing-edge");
    assertThat(Bench.told("BB26667 AC32371 BC59038")).isEqualTo("verdict.missing_front|A");
    assertThat(Bench.told("AB0 BB26667 AC32371")).isEqualTo("verdict.missing_tail|B");
    assertThat(Bench.told("AB0 BC59038"))
        .isEqualTo("verdict.missing_tail|A verdict.missing_front|B");
  }
}
