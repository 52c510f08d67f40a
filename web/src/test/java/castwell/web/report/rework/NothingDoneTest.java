package castwell.web.report.rework;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.view.report.rework.ReworkReportView;
import castwell.capture.view.report.rework.ReworkView;
import castwell.web.report.ReportRequest;
import castwell.web.report.TypedSeason;
import castwell.web.report.rework.ReworkReport.Question;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From sheets to sentences: how often bows that nothing was done to are said to have changed, by
 * seeded seasons in which days differ by 0.6 % and each bow's own by 0.4 %.
 */
@Tag("slow")
class NothingDoneTest {
  private static final int SEASONS = Integer.getInteger("castwell.repeats", 12);
  private static final int BOWS = 5;
  private static final double[] GRAINS = {420, 500, 600};
  private static final List<String> SESSIONS =
      List.of("2026-04-10", "2026-04-11", "2026-05-10", "2026-05-11");

  @TempDir Path folder;
  private final long seed = Seed.of(NothingDoneTest.class);
  private final Random random = new Random(seed);

  private void shoot(TypedSeason season) {
    StringBuilder bows = new StringBuilder("bow,state_on,draw_weight_lb,draw_length_in\n");
    for (int b = 0; b < BOWS; b++) {
      bows.append("bow ").append(b).append(",2026-04-01,50,27\n");
    }
    bows.append("bow 0,2026-05-01,50,27\n");
    season.take(SheetKind.BOWS, bows.toString());
    StringBuilder arrows = new StringBuilder("arrow,mass_gr\n");
    for (double grains : GRAINS) {
      arrows.append("arrow ").append(grains).append(',').append(grains).append('\n');
    }
    season.take(SheetKind.ARROWS, arrows.toString());
    for (String session : SESSIONS) {
      double day = 0.006 * random.nextGaussian();
      for (int b = 0; b < BOWS; b++) {
        double own = day + 0.004 * random.nextGaussian();
        for (double grains : GRAINS) {
          double fps = 3_900 / Math.sqrt(grains + 120 + 10 * b) * Math.exp(own);
          for (int i = 0; i < 4; i++) {
            double speed = fps * (1 + 0.006 * random.nextGaussian());
            season.shot("bow " + b, "arrow " + grains, session, speed);
          }
        }
      }
    }
    season.takeShots();
  }

  private static ReworkReportView report(TypedSeason season, Question question) {
    return season.read(
        t -> ReworkReport.of(t, TypedSeason.ZONE, question, ReportRequest.of(10, 0.5)).data());
  }

  private static void agrees(ReworkReportView report) {
    ReworkView told = report.rework();
    double low = told.ci95Percent().low().orElseThrow();
    double high = told.ci95Percent().high().orElseThrow();
    String expected =
        low > 0
            ? "faster"
            : high < 0
                ? "slower"
                : Math.max(-low, high) <= 1 ? "no change larger than" : "can't tell";
    assertThat(told.conclusion()).startsWith(expected);
    assertThat(told.changePercent()).isBetween(low, high);
    assertThat(told.p() < 0.05).isEqualTo(low > 0 || high < 0);
    assertThat(told.noChangeLargerThanPercent()).isEqualTo(Math.max(Math.abs(low), Math.abs(high)));
    if (expected.startsWith("no change")) {
      double said = Double.parseDouble(told.conclusion().replaceAll("[^0-9.]", ""));
      assertThat(said).isBetween(told.noChangeLargerThanPercent(), 1.0);
    }
    assertThat(report.sentences().get(0))
        .contains(
            switch (expected) {
              case "faster" -> "is faster by";
              case "slower" -> "is slower by";
              case "can't tell" -> "Can't tell whether";
              default -> "No change of";
            });
  }

  @Test
  void isSeldomTakenForAChange() throws IOException {
    int asked = 0;
    int alarms = 0;
    for (int i = 0; i < SEASONS; i++) {
      try (TypedSeason season = new TypedSeason(Files.createDirectory(folder.resolve("s" + i)))) {
        shoot(season);
        List<Question> questions =
            List.of(
                new Question("bow 0", "2026-04-01", "2026-05-01", List.of()),
                new Question("bow 0", "2026-04-11", "2026-05-10", List.of()),
                new Question("bow 1", "2026-04-10", "2026-05-11", List.of("bow 2")),
                new Question("bow 3", "2026-04-11", "2026-05-10", List.of()));
        for (Question question : questions) {
          ReworkReportView report = report(season, question);
          agrees(report);
          asked++;
          alarms += report.rework().conclusion().endsWith("er") ? 1 : 0;
        }
      }
    }
    // 5 %, and what may be chance in so few: three standard errors.
    double most = 0.05 + 3 * Math.sqrt(0.05 * 0.95 / asked);
    assertThat((double) alarms / asked).as("seed %d", seed).isLessThanOrEqualTo(most);
  }
}
