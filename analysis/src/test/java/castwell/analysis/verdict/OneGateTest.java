package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class OneGateTest {

  @Test
  void theOtherNeverSawIt() {
    assertThat(Bench.codes("AB0 AC32371")).containsExactly("one-gate");
    assertThat(Bench.told("AB0 AC32371")).isEqualTo("verdict.one_gate|B");
    assertThat(Bench.told("BB0 BC32371")).isEqualTo("verdict.one_gate|A");
    assertThat(Bench.codes("BB0")).containsExactly("one-gate");
  }
}
