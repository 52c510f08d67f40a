package castwell.web.report.rework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.view.report.rework.ReworkReportView;
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

/** A bow that no other was shot with. Figures were reckoned by an independent program in R. */
@Tag("slow")
class AloneReworkTest {
  @TempDir Path folder;
  private TypedSeason season;

  @BeforeEach
  void open() {
    season = new TypedSeason(folder);
    season.take(SheetKind.ARROWS, "arrow,mass_gr\nA400,400\nA500,500\nA650,650\nA510,510\n");
  }

  @AfterEach
  void close() {
    season.close();
  }

  private void bows(String since) {
    season.take(
        SheetKind.BOWS,
        "bow,state_on,draw_weight_lb,draw_length_in\nAsh,2026-04-01,50,27\nAsh,%s,50,27\n"
            .formatted(since));
  }

  private void shoot(String session, String at, double fps) {
    String[] arrows = {"A400", "A500", "A650"};
    double[] factors = {1.09, 1, 0.895};
    for (int a = 0; a < arrows.length; a++) {
      for (double speed : TypedSeason.speeds(fps * factors[a], 0.9, 4)) {
        season.shotAt("Ash", arrows[a], session, at, speed);
      }
    }
  }

  private ReworkReportView report(String before, String after) {
    season.takeShots();
    Question question = new Question("Ash", before, after, List.of());
    return season.read(
        t -> ReworkReport.of(t, TypedSeason.ZONE, question, ReportRequest.of(10, 0.5)).data());
  }

  @Test
  void withinOneAfternoonTheDayIsTheSame() {
    bows("2026-05-10T15:00");
    shoot("2026-05-10", "2026-05-10T14:00:00", 150);
    shoot("2026-05-10", "2026-05-10T16:00:00", 153);
    ReworkReportView report = report("2026-05-10", "2026-05-10");

    assertThat(report.stateBefore()).isEqualTo("2026-04-01");
    assertThat(report.stateAfter()).isEqualTo("2026-05-10T15:00");
    assertThat(report.rework().changePercent()).isCloseTo(2.000056, within(1e-3));
    assertThat(report.rework().ci95Percent().low().orElseThrow()).isCloseTo(1.460451, within(1e-3));
    assertThat(report.rework().ci95Percent().high().orElseThrow())
        .isCloseTo(2.542532, within(1e-3));
    assertThat(report.rework().conclusion()).isEqualTo("faster");
    assertThat(report.sentences().toString())
        .contains("in one session, so the day is the same", "stringing it again")
        .doesNotContain("Days alone");
  }

  @Test
  void overTwoDaysWithoutAnotherBowHardlyAnythingCanBeTold() {
    bows("2026-05-01");
    shoot("2026-04-10", "2026-04-10T12:00:00", 150 * 1.001);
    shoot("2026-05-10", "2026-05-10T12:00:00", 153 * 0.995 * 1.002);
    ReworkReportView report = report("2026-04-01", "2026-05-01");

    assertThat(report.rework().changePercent()).isCloseTo(1.591433, within(1e-3));
    assertThat(report.rework().ci95Percent().low().orElseThrow())
        .isCloseTo(-1.306911, within(1e-3));
    assertThat(report.rework().ci95Percent().high().orElseThrow())
        .isCloseTo(4.574894, within(1e-3));
    assertThat(report.rework().conclusion()).isEqualTo("can't tell");
    assertThat(report.rework().controls()).isEmpty();
    assertThat(report.arrows()).hasSize(3);
    assertThat(report.arrows().get(0).pRepeatsAlone()).isLessThan(0.05);
    assertThat(report.sentences().toString())
        .contains(
            "No other bow was shot both before and after",
            "is still mostly assumed",
            "a day can't be told from a bow's own",
            "Even very many shots on these days would leave");
  }

  @Test
  void otherArrowsThanBeforeRestOnTheCurve() {
    bows("2026-05-01");
    for (double speed : TypedSeason.speeds(150, 0.9, 4)) {
      season.shot("Ash", "A500", "2026-04-10", speed);
      season.shot("Ash", "A510", "2026-05-10", speed);
    }
    ReworkReportView report = report("2026-04-01", "2026-05-01");

    assertThat(report.arrows()).isEmpty();
    assertThat(report.rework().massGr()).isCloseTo(505, within(1e-9));
    // The heavier arrow is as fast, and would be 0.8 % slower: e is 0.8 before any shot.
    assertThat(report.rework().changePercent()).isCloseTo(0.8, within(0.1));
    assertThat(report.moved()).isEmpty();
    assertThat(report.sentences().toString())
        .contains(
            "No arrow was shot both before and after",
            "These arrows are too alike to split energy from limb mass");
  }
}
