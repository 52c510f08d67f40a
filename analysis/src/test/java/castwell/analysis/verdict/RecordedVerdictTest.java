package castwell.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.RecordedPassage;
import castwell.analysis.speed.TickRate;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Passages as a board sent them; what was amiss with each written down by whoever recorded it. */
class RecordedVerdictTest {

  static List<RecordedPassage> passages() {
    return RecordedPassage.all();
  }

  @ParameterizedTest
  @MethodSource("passages")
  void countsOrSaysWhatWasAmiss(RecordedPassage recorded) {
    TickRate rate = new TickRate(recorded.hz(), 1e-5);
    Verdict verdict = Bench.assess(recorded.passage(), rate).verdict();

    assertThat(verdict.reasons().stream().map(Reason::code).findFirst()).isEqualTo(recorded.code());
    assertThat(verdict.counts()).isEqualTo(recorded.code().isEmpty());
  }
}
