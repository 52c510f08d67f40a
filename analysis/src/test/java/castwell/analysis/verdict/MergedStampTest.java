package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MergedStampTest {

  @Test
  void isNamedAndItsEdgesAreNotCalledUnseen() {
    assertThat(Bench.codes("AB0 BG26667 AC32371 BC59038")).containsExactly("merged-edges");
    assertThat(Bench.told("AB0 BG26667 AC32371 BC59038")).isEqualTo("verdict.merged|B");
  }

  @Test
  void inTheFletchingSpoilsNothing() {
    assertThat(Bench.codes("AB0 BB26667 AG31900 AC32371 BC59038")).isEmpty();
  }
}
