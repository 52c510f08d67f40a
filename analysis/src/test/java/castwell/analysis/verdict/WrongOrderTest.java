package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WrongOrderTest {

  @Test
  void backwards() {
    assertThat(Bench.codes("BB0 AB26667 BC32371 AC59038")).containsExactly("wrong-order");
    assertThat(Bench.told("BB0 AB26667 BC32371 AC59038")).isEqualTo("verdict.wrong_order_front");
  }

  @Test
  void bothAtOnceAsALampWouldDo() {
    assertThat(Bench.codes("AB0 BB0 AC32371 BC32371")).containsExactly("wrong-order");
  }

  @Test
  void onlyTheTails() {
    assertThat(Bench.codes("AB0 BB26667 BC32371 AC59038")).startsWith("wrong-order");
    assertThat(Bench.told("AB0 BB26667 BC32371 AC59038")).startsWith("verdict.wrong_order_tail");
  }
}
