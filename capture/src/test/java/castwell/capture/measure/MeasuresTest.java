package castwell.capture.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What is known by the catalogue, and what is taken to be so where nobody says. */
class MeasuresTest {
  private static final Measures<ArrowMeasure> NONE = Measures.none();
  private static final ArrowMeasure[] ALL = ArrowMeasure.values();

  @Test
  void aMeasureIsNamedByItsUnitAtTheEdgeAndByTheSisInside() {
    assertThat(BowMeasure.TILLER.field()).isEqualTo("tiller_mm");
    assertThat(BowMeasure.TILLER.column()).isEqualTo("tiller_m");
    assertThat(BowMeasure.WOOD.field()).isEqualTo("wood");
    assertThat(BowMeasure.WOOD.column()).isEqualTo("wood");
    assertThat(ArrowMeasure.SPINE_WEIGHT.field()).isEqualTo("spine_weight_lb");
    assertThat(ArrowMeasure.SPINE_WEIGHT.column()).isEqualTo("spine_weight_n");
  }

  /** By hand: 28 in are 711.2 mm, 1.94 lb 8.62955 N. */
  @Test
  void aSpineWasTakenAsUsualWhereNobodySays() {
    Measures<ArrowMeasure> whole = NONE.with(ArrowMeasure.SPINE, 0.0127).completed(ALL);
    assertThat(whole.number(ArrowMeasure.SPINE)).hasValue(0.0127);
    assertThat(whole.number(ArrowMeasure.SPINE_SPAN).orElseThrow())
        .isCloseTo(0.7112, within(1e-12));
    assertThat(whole.number(ArrowMeasure.SPINE_WEIGHT).orElseThrow())
        .isCloseTo(8.62955, within(1e-4));
  }

  @Test
  void whatWasToldOfASpineHolds() {
    Measures<ArrowMeasure> told =
        NONE.with(ArrowMeasure.SPINE, 0.0127).with(ArrowMeasure.SPINE_SPAN, 0.66);
    assertThat(told.completed(ALL).number(ArrowMeasure.SPINE_SPAN)).hasValue(0.66);
  }

  @Test
  void howASpineWasTakenIsNothingWithoutIt() {
    Measures<ArrowMeasure> told =
        NONE.with(ArrowMeasure.SPINE_SPAN, 0.66).with(ArrowMeasure.LENGTH, 0.7);
    assertThat(told.completed(ALL)).isEqualTo(NONE.with(ArrowMeasure.LENGTH, 0.7));
  }

  @Test
  void numbersAndWordsAreAskedOfTheirOwn() {
    Measures<BowMeasure> all =
        Measures.of(
            BowMeasure.values(), measure -> OptionalDouble.of(1), measure -> Optional.of("elm"));
    assertThat(all.words()).containsOnlyKeys(BowMeasure.WOOD);
    assertThat(all.numbers()).hasSize(BowMeasure.values().length - 1);
    assertThat(all.number(BowMeasure.WOOD)).isEmpty();
    assertThat(all.words(BowMeasure.WOOD)).contains("elm");
  }
}
