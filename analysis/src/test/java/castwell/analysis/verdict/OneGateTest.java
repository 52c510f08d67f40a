package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class OneGateTest {

  @Test
  void theOtherNeverSawIt() {
    assertThat(Bench.codes("AB0 AC32371")).containsExactly("one-gate");
    assertThat(Bench.sentence("AB0 AC32371")).isEqualTo("Gate B never saw it.");
    assertThat(Bench.sentence("BB0 BC32371")).isEqualTo("Gate A never saw it.");
    assertThat(Bench.codes("BB0")).containsExactly("one-gate");
  }
}
