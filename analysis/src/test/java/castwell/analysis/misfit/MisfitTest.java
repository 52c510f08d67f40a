package castwell.analysis.misfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.misfit.Misfit.Candidate;
import castwell.analysis.misfit.Misfit.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Speeds in m/s, lengths in m. By hand, with R 4.2.2's dt and pt. */
class MisfitTest {
  private static final Optional<Expected> LONG = Optional.of(new Expected(0.75, 0.004, 20));
  private static final Optional<Expected> SHORT = Optional.of(new Expected(0.72, 0.004, 20));

  private static Candidate<String> of(String name, double mps, Optional<Expected> length) {
    return new Candidate<>(name, new Expected(mps, 0.3, 20), length);
  }

  private static List<Fit<String>> find(
      Candidate<String> tagged, double mps, OptionalDouble length, List<Candidate<String>> others) {
    return Misfit.find(tagged, others, mps, length);
  }

  private static final OptionalDouble NO_LENGTH = OptionalDouble.empty();

  @Test
  void aShotThatFitsItsTagsIsLeftAlone() {
    var tagged = of("tagged", 50, Optional.empty());
    var other = of("other", 50.6, Optional.empty());
    assertThat(find(tagged, 50.1, NO_LENGTH, List.of(other))).isEmpty();
    assertThat(find(tagged, 50.6, NO_LENGTH, List.of(other))).as("p 0.06").isEmpty();
  }

  @Test
  void theSpeedAloneTellsWhenItIsFarOff() {
    var tagged = of("tagged", 50, Optional.empty());
    var other = of("other", 47, Optional.empty());
    List<Fit<String>> fits = find(tagged, 47.1, NO_LENGTH, List.of(other));
    assertThat(fits).extracting(Fit::what).containsExactly("other");
    // exp(dt(1/3, 20, log = TRUE) - dt(-29/3, 20, log = TRUE))
    assertThat(fits.get(0).timesAsLikely()).isCloseTo(77_472_087.0567, within(1.0));
  }

  @Test
  void aShotThatFitsNothingIsNoMisfit() {
    var tagged = of("tagged", 50, Optional.empty());
    var other = of("other", 47, Optional.empty());
    assertThat(find(tagged, 45, NO_LENGTH, List.of(other))).isEmpty();
    assertThat(find(tagged, 48.5, NO_LENGTH, List.of(other))).isEmpty();
  }

  @Test
  void theLengthTellsArrowsOfOneSpeedApart() {
    var tagged = of("tagged", 50, LONG);
    var other = of("other", 50.2, SHORT);
    assertThat(find(tagged, 50.1, OptionalDouble.of(0.721), List.of(other)))
        .extracting(Fit::what)
        .containsExactly("other");
    assertThat(find(tagged, 50.1, OptionalDouble.of(0.749), List.of(other))).isEmpty();
    assertThat(find(tagged, 50.1, NO_LENGTH, List.of(other))).isEmpty();
  }

  @Test
  void anArrowWhoseLengthIsOffIsNotToldForItsSpeedAlone() {
    var tagged = of("tagged", 50, LONG);
    var other = of("other", 47, SHORT);
    assertThat(find(tagged, 47, OptionalDouble.of(0.75), List.of(other))).isEmpty();
  }

  @Test
  void whatFitsNearlyAsWellAsTheBestIsToldWithIt() {
    var tagged = of("tagged", 50, Optional.empty());
    List<Candidate<String>> others =
        List.of(
            of("near", 47.2, Optional.empty()),
            of("best", 47, Optional.empty()),
            of("far", 45, Optional.empty()));
    assertThat(find(tagged, 47.05, NO_LENGTH, others))
        .extracting(Fit::what)
        .containsExactly("best", "near");
  }

  /** 2,286 times as likely: enough where one other was looked at, not where a hundred were. */
  @Test
  void aFullRackNeedsMoreToBeClear() {
    var tagged = of("tagged", 50, Optional.empty());
    var other = of("other", 48.6, Optional.empty());
    assertThat(find(tagged, 48.6, NO_LENGTH, List.of(other))).hasSize(1);
    List<Candidate<String>> full = new ArrayList<>(List.of(other));
    for (int i = 0; i < 99; i++) {
      full.add(of("far " + i, 80 + i, Optional.empty()));
    }
    assertThat(find(tagged, 48.6, NO_LENGTH, full)).isEmpty();
  }
}
