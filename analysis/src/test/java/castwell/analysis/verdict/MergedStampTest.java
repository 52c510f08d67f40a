package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MergedStampTest {

  @Test
  void isNamedAndItsEdgesAreNotCalledUnseen() {
    assertThat(Bench.codes("AB0 BG26667 AC32371 BC59038")).containsExactly("merged-edges");
    assertThat(Bench.sentence("AB0 BG26667 AC32371 BC59038"))
        .isEqualTo("Two edges at gate B fell together and got one stamp.");
  }

  @Test
  void inTheFletchingSpoilsItToo() {
    assertThat(Bench.codes("AB0 BB26667 AG31900 AC32371 BC59038")).containsExactly("merged-edges");
  }
}
