package castwell.analysis.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.speed.Budget.Share;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import java.util.Comparator;
import org.junit.jupiter.api.Test;

class BudgetTest {
  private static final TickRate RATE = new TickRate(2e6, 2e-6);
  private static final Calibration GATES =
      new Calibration(0.6096, 0.0003, 0.001, 2, Oscillator.RESONATOR).with(SetUpErrors.USUAL);

  private final Budget budget = Budget.of(GATES, RATE);

  @Test
  void theLargestShareIsFirst() {
    assertThat(budget.shares())
        .isSortedAccordingTo(Comparator.comparingDouble(Share::relativeU).reversed());
    assertThat(budget.shares())
        .extracting(Share::source)
        .containsExactly(
            "trigger",
            "oblique path",
            "gate spacing",
            "rails' temperature",
            "gates' latencies",
            "gates out of parallel",
            "tick",
            "tick rate",
            "drag between the gates");
  }

  @Test
  void itsTotalIsWhatASpeedSays() {
    Quantity speed = new Flight(50, 0.74).speedOver(GATES, RATE);

    for (Kind kind : Kind.values()) {
      assertThat(budget.relativeU(kind))
          .isCloseTo(speed.standardUncertainty(kind) / speed.value(), within(1e-9));
    }
    assertThat(budget.relativeU())
        .isCloseTo(
            Math.hypot(budget.relativeU(Kind.OWN), budget.relativeU(Kind.COMMON)), within(1e-12));
  }

  /** By hand: 1 mm at four places, of 609.6 mm; 0.05236 squared over the root of 20; and so on. */
  @Test
  void sharesAreWhatTheyAreReckonedToBe() {
    share("trigger", 1e-3 / 0.6096);
    share("oblique path", 0.052359878 * 0.052359878 / 4.472135955);
    share("gate spacing", 0.3e-3 / 0.6096);
    share("rails' temperature", 23e-6 * 20 / 1.7320508);
    share("gates' latencies", 4e-6 / 1.7320508 * 50 / 0.6096);
    share("gates out of parallel", 1e-3 / 0.6 * 0.1 / 3 / 0.6096);
    share("drag between the gates", 0.005 * 0.6096 * 0.005 * 0.6096 / 24 / 2.236068);
  }

  @Test
  void aFasterArrowSuffersMoreFromUnlikeLatencies() {
    assertThat(GATES.common(Quantity.exact(100)).only(Kind.COMMON).contributions())
        .hasEntrySatisfying(
            SetUpErrors.LATENCIES, part -> assertThat(part).isCloseTo(0.03788, within(1e-4)));
    assertThat(GATES.common(Quantity.exact(50)).only(Kind.COMMON).contributions())
        .hasEntrySatisfying(
            SetUpErrors.LATENCIES, part -> assertThat(part).isCloseTo(0.00947, within(1e-4)));
  }

  private void share(String source, double relativeU) {
    assertThat(budget.shares())
        .filteredOn(share -> share.source().equals(source))
        .singleElement()
        .satisfies(share -> assertThat(share.relativeU() / relativeU).isCloseTo(1, within(2e-3)));
  }
}
