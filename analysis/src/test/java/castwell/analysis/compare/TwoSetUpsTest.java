package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.SetUp;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Gates that were moved between two days; by hand, as independent errors of two set-ups add. */
class TwoSetUpsTest {
  private static final SetUp MAY = new SetUp("May", 0.005);
  private static final SetUp JUNE = new SetUp("June", 0.005);

  private static Quantity change(String bow, double before, double after, SetUp later) {
    return Change.of(
            bow, List.of(cell(bow, "d1", MAY, before)), List.of(cell(bow, "d2", later, after)))
        .orElseThrow()
        .meanMps();
  }

  private static Cell cell(String bow, String day, SetUp gates, double meanMps) {
    Cell cell = Made.cell(bow, "arrow", day, 0.03, Made.with(meanMps, 0.3, 20));
    return new Cell(cell.name(), cell.massKg(), gates, cell.shots(), cell.setAside());
  }

  @Test
  void aChangeNoLargerThanTheGatesErrorCantBeTold() {
    Quantity change = change("bow", 50, 50.5, JUNE);

    assertThat(change.only(Kind.OWN).pValue()).isLessThan(1e-4);
    assertThat(change.standardUncertainty(Kind.COMMON))
        .isCloseTo(0.005 * Math.hypot(50, 50.5), within(1e-12));
    assertThat(Conclusion.of(change)).isEqualTo(Conclusion.CANT_TELL);
  }

  @Test
  void overGatesLeftAloneItCan() {
    assertThat(Conclusion.of(change("bow", 50, 50.5, MAY))).isEqualTo(Conclusion.FASTER);
  }

  /** The control was shot over both set-ups too, so their errors go out with the day. */
  @Test
  void withAControlItCan() {
    Quantity effect =
        Control.of(List.of(change("control", 48, 48, JUNE)))
            .takenFrom(change("bow", 50, 50.5, JUNE));

    assertThat(effect.standardUncertainty(Kind.COMMON))
        .isCloseTo(0.005 * Math.hypot(50 - 48, 50.5 - 48), within(1e-12));
    assertThat(Conclusion.of(effect)).isEqualTo(Conclusion.FASTER);
    assertThat(Conclusion.of(effect.times(-1))).isEqualTo(Conclusion.SLOWER);
  }
}
