package castwell.web.season;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.view.Interval95;
import castwell.capture.view.report.bow.AnyDayView;
import castwell.capture.view.report.bow.BowReportView;
import castwell.capture.view.report.cell.CastView;
import castwell.web.report.ReportRequest;
import castwell.web.report.TypedSeason;
import castwell.web.report.bow.BowReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a display has wrong for all that was read from it. */
@Tag("slow")
class OneDisplayTest {
  private static final double DISPLAY_U = 0.005;

  /** Of 95 % of a normal distribution. */
  private static final double COVERING = 1.959;

  @TempDir Path folder;

  /**
   * @param relativeU of the display, by an arrow's mass
   */
  private BowReportView bow(int sessions, ToDoubleFunction<Double> relativeU) throws IOException {
    Random random = new Random(1);
    TrueBow ash = new TrueBow("Ash", 50, 60, 120);
    StringBuilder shots = new StringBuilder("bow,arrow,speed_fps,session,speed_u_common_fps\n");
    for (int j = 1; j <= sessions; j++) {
      for (double grains : new double[] {400, 500, 650}) {
        for (int i = 0; i < 5; i++) {
          double fps = ash.fps(grains) * (1 + 0.003 * random.nextGaussian());
          double u = relativeU.applyAsDouble(grains) * fps;
          shots.append(
              String.format(Locale.ROOT, "Ash,A%.0f,%.3f,2026-05-%02d,%.6f%n", grains, fps, j, u));
        }
      }
    }
    try (TypedSeason season = new TypedSeason(Files.createTempDirectory(folder, "store"))) {
      season.take(
          SheetKind.BOWS,
          "bow,state_on,draw_weight_lb,draw_length_in\nAsh," + TrueSeason.BEGAN + ",50,28\n");
      season.take(SheetKind.ARROWS, "arrow,mass_gr\nA400,400\nA500,500\nA650,650\n");
      season.take(SheetKind.SHOTS, shots.toString());
      return season.read(
          t ->
              BowReport.of(t, TypedSeason.ZONE, "Ash", Optional.empty(), ReportRequest.of(10, 0))
                  .data());
    }
  }

  private static double halfWidth(Interval95 interval) {
    return (interval.high().orElseThrow() - interval.low().orElseThrow()) / 2;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 8})
  void isNoLessForBeingReadOnManyDays(int sessions) throws IOException {
    BowReportView bow = bow(sessions, grains -> DISPLAY_U);
    CastView cast = bow.cast().orElseThrow();
    double least = COVERING * DISPLAY_U;
    assertThat(halfWidth(cast.ci95AnyDayFps()) / cast.speedFps().orElseThrow())
        .isGreaterThan(least);
    assertThat(halfWidth(cast.ci95TodayFps()) / cast.todayFps().orElseThrow()).isGreaterThan(least);
    AnyDayView pair = bow.anyDay().orElseThrow();
    assertThat(halfWidth(pair.energyCi95Ftlbf()) / pair.energyFtlbf().orElseThrow())
        .isGreaterThan(2 * least);
  }

  @Test
  void leavesTheVirtualMassAloneOnlyWhereItIsAlikeForAllArrows() throws IOException {
    double alike = kWidth(grains -> DISPLAY_U);
    assertThat(alike).isBetween(0.9 * kWidth(grains -> 0), 1.1 * kWidth(grains -> 0));
    assertThat(kWidth(grains -> grains > 600 ? 2 * DISPLAY_U : 0)).isGreaterThan(1.5 * alike);
  }

  private double kWidth(ToDoubleFunction<Double> relativeU) throws IOException {
    return halfWidth(bow(8, relativeU).anyDay().orElseThrow().virtualMassCi95Gr());
  }
}
