package castwell.web.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.uncertainty.Interval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class FiguresTest {
  private static final Unit PLAIN = new Unit("x", 1, 1);

  // JCGM 100:2008, 7.2.6: at most two significant digits of u, and the value to the same place; the
  // same cases as the range page's script is tried with.
  @ParameterizedTest
  @CsvSource({
    "152.34567, 0.44,     152.3 ± 0.4 x",
    "152.34567, 0.3036,   152.3 ± 0.3 x",
    "152.34567, 0.1,      152.3 ± 0.1 x",
    "152.34567, 0.099,    152.35 ± 0.10 x",
    "152.34567, 0.0949,   152.35 ± 0.09 x",
    "152.34567, 0.049,    152.35 ± 0.05 x",
    "152.34567, 0.0049,   152.346 ± 0.005 x",
    "152.34567, 0.96,     152.3 ± 1.0 x",
    "152.34567, 1.24,     152.3 ± 1.2 x",
    "152.34567, 9.94,     152.3 ± 9.9 x",
    "152.34567, 9.96,     152 ± 10 x",
    "152.34567, 15.9,     152 ± 16 x",
    "0.33301018, 0.000338, 0.3330 ± 0.0003 x"
  })
  void noMoreDigitsThanTheUncertaintyAllows(double value, double u, String shown) {
    assertThat(FigureText.figure(PLAIN, value, u)).contains(shown);
  }

  @Test
  void withoutAnUncertaintyTheUsualDigits() {
    assertThat(FigureText.figure(PLAIN, 152.34, 0)).contains("152.3 x");
    assertThat(FigureText.figure(PLAIN, 152.34, Double.POSITIVE_INFINITY)).contains("152.3 x");
    assertThat(FigureText.figure(PLAIN, Double.NaN, 1)).isEmpty();
    assertThat(FigureText.plain(PLAIN, 52.0)).contains("52 x");
  }

  @Test
  void anIntervalThatIsOpenIsNone() {
    assertThat(FigureText.interval(PLAIN, new Interval(1, Double.POSITIVE_INFINITY), "to"))
        .isEmpty();
    assertThat(FigureText.interval(PLAIN, new Interval(149.11, 151.29), "to"))
        .contains("149.1 to 151.3 x");
  }

  // NIST SP 811 (2008), appendix B: exact or as printed there.
  @ParameterizedTest
  @CsvSource({
    "SPEED, 0.3048",
    "ARROW_MASS, 6.479891e-5",
    "BOW_MASS, 0.45359237",
    "FORCE, 4.4482216152605",
    "ENERGY, 1.3558179483314",
    "MOMENTUM, 4.4482216152605",
    "DRAW_LENGTH, 0.0254",
    "LENGTH, 0.0254",
    "DISTANCE, 0.3048"
  })
  void aTradeUnitIsWhatTheStandardSays(Dimension dimension, double si) {
    assertThat(UnitSystem.TRADE.of(dimension).si()).isCloseTo(si, within(si * 1e-12));
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void aSystemGoesByItsWord(UnitSystem system) {
    assertThat(UnitSystem.of(system.word())).contains(system);
    assertThat(UnitSystem.of("furlongs")).isEmpty();
  }
}
