package castwell.web.report.rework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.command.Refused;
import castwell.capture.view.Interval95;
import castwell.capture.view.report.rework.MovedView;
import castwell.capture.view.report.rework.ReworkReportView;
import castwell.capture.view.report.rework.ReworkView;
import castwell.web.report.FourBows;
import castwell.web.report.ReportRequest;
import castwell.web.report.TypedSeason;
import castwell.web.report.rework.ReworkReport.Question;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * All figures were reckoned by an independent program in R, which takes the log of each shot by
 * itself; the store's sums know the mean log to about 1e-6.
 */
@Tag("slow")
class ReworkAgainstRTest {
  @TempDir Path folder;
  private TypedSeason season;

  @BeforeEach
  void shoot() {
    season = new TypedSeason(folder);
    FourBows.shoot(season);
  }

  @AfterEach
  void close() {
    season.close();
  }

  private ReworkReportView report(String bow, String before, String after, String... controls) {
    Question question = new Question(bow, before, after, List.of(controls));
    return season.read(
        t -> ReworkReport.of(t, TypedSeason.ZONE, question, ReportRequest.of(10, 0.5)).data());
  }

  private static void is(ReworkView told, double percent, double low, double high, double p) {
    assertThat(told.changePercent()).isCloseTo(percent, within(1e-3));
    is(told.ci95Percent(), low, high, 1e-3);
    assertThat(told.p()).isCloseTo(p, within(1e-3));
    double farther = Math.max(Math.abs(low), Math.abs(high));
    assertThat(told.noChangeLargerThanPercent()).isCloseTo(farther, within(1e-3));
  }

  private static void is(Interval95 told, double low, double high, double accuracy) {
    assertThat(told.low().orElseThrow()).isCloseTo(low, within(accuracy));
    assertThat(told.high().orElseThrow()).isCloseTo(high, within(accuracy));
  }

  @Test
  void twoStatesWithAllBowsLeftAsTheyWere() {
    ReworkReportView report = report("Ash", "2026-04-01", "2026-05-01");

    ReworkView told = report.rework();
    is(told, 2.214470, 1.549991, 2.854170, 4.8645e-6);
    assertThat(told.changeFps()).isCloseTo(3.273560, within(2e-3));
    is(told.ci95Fps(), 2.291287, 4.219201, 2e-3);
    assertThat(told.conclusion()).isEqualTo("faster");
    assertThat(told.massGr()).isCloseTo(1550 / 3.0, within(1e-9));
    // Oak was changed as well.
    assertThat(told.controls()).containsExactlyInAnyOrder("Elm", "Yew");
    assertThat(told.sessionsBefore()).containsExactly("2026-04-10", "2026-04-20");
    assertThat(told.sessionsAfter()).containsExactly("2026-05-10", "2026-05-20");
    assertThat(report.sentences().get(0))
        .startsWith(
            "Ash is faster by 3.3 ft/s (2.3 to 4.2), that is 2.2 % (1.5 to 2.9), with an arrow of"
                + " 517 gr.");
  }

  @Test
  void energyAndVirtualMassMovedWithHolm() {
    MovedView moved = report("Ash", "2026-04-01", "2026-05-01").moved().orElseThrow();

    assertThat(moved.energyChangeFtlbf()).isCloseTo(1.376585, within(2e-3));
    is(moved.energyChangeCi95Ftlbf(), -0.292195, 3.134427, 5e-3);
    assertThat(moved.energyP()).isCloseTo(2 * 0.0632036, within(1e-3));
    assertThat(moved.virtualMassP()).isCloseTo(1, within(1e-3));
    assertThat(moved.virtualMassChangeGr()).isCloseTo(0, within(0.05));
    assertThat(moved.answer()).isEqualTo("nothing shown");
  }

  @Test
  void onlyTheControlThatIsNamed() {
    ReworkView told = report("Ash", "2026-04-01", "2026-05-01", "Elm").rework();

    is(told, 2.062084, 1.332009, 2.777013, 2.7867e-5);
    assertThat(told.controls()).containsExactly("Elm");
  }

  @Test
  void onlyTheSessionsThatAreNamed() {
    ReworkView told = report("Ash", "2026-04-20", "2026-05-10").rework();

    is(told, 2.399691, 1.448644, 3.297841, 1.8518e-4);
    assertThat(told.sessionsBefore()).containsExactly("2026-04-20");
    assertThat(told.sessionsAfter()).containsExactly("2026-05-10");
  }

  @Test
  void twoSessionsOfABowToWhichNothingWasDone() {
    ReworkReportView report = report("Elm", "2026-04-10", "2026-05-20");

    is(report.rework(), 0.513983, -0.434662, 1.450260, 0.26205);
    assertThat(report.rework().conclusion()).isEqualTo("can't tell");
    assertThat(report.rework().controls()).containsExactly("Yew");
    assertThat(report.sentences().toString())
        .contains("between -0.4 and +1.5 %", "knows of nothing done to Elm");
  }

  /** A state's other sessions are what one of them is compared with. */
  @Test
  void oneSessionAgainstTheOthersOfItsState() {
    ReworkView told = report("Elm", "2026-04-01", "session:2026-05-20").rework();

    assertThat(told.sessionsBefore()).containsExactly("2026-04-10", "2026-04-20", "2026-05-10");
    assertThat(told.sessionsAfter()).containsExactly("2026-05-20");
  }

  @Test
  void aControlThatIsNoneIsRefused() {
    refused("changed_control", "2026-04-01", "2026-05-01", "Oak");
    refused("own_control", "2026-04-01", "2026-05-01", "Ash");
    refused("no_bow", "2026-04-01", "2026-05-01", "Fir");
  }

  @Test
  void whatIsNoComparisonIsRefused() {
    refused("same_shots", "2026-04-10", "2026-04-10");
    refused("same_shots", "2026-04-01", "state:2026-04-01");
    refused("not_shot_on", "2026-04-11", "2026-05-01");
    refused("not_shot_on", "state:2026-04-10", "2026-05-01");
  }

  private void refused(String why, String before, String after, String... controls) {
    assertThatThrownBy(() -> report("Ash", before, after, controls))
        .isInstanceOfSatisfying(
            Refused.class, e -> assertThat(e.phrase().key()).isEqualTo("refused." + why));
  }
}
