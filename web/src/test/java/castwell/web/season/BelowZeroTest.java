package castwell.web.season;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.bow.AnyDayView;
import castwell.capture.view.report.bow.BowReportView;
import castwell.capture.view.report.reach.ReachReportView;
import castwell.capture.view.report.reach.ReachedView;
import castwell.web.report.ReportRequest;
import castwell.web.report.TypedSeason;
import castwell.web.report.bow.BowReport;
import castwell.web.report.reach.ReachReport;
import castwell.web.report.reach.ReachReport.Wanted;
import castwell.web.report.reach.Yardstick;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Three bows whose shots, by chance or a wrong scale, look as if limbs and string kept nothing. */
@Tag("slow")
class BelowZeroTest {
  private static final List<TrueBow> BOWS =
      List.of(
          new TrueBow("Ash", 50, 50, -2),
          new TrueBow("Elm", 50, 52, -30),
          new TrueBow("Yew", 50, 54, -80));

  @TempDir Path folder;
  private TypedSeason season;

  @BeforeEach
  void shoot() {
    season = new TypedSeason(folder);
    Random random = new Random(2);
    StringBuilder bows = new StringBuilder("bow,state_on,draw_weight_lb,draw_length_in\n");
    StringBuilder shots = new StringBuilder("bow,arrow,speed_fps,session\n");
    for (TrueBow bow : BOWS) {
      bows.append(bow.name()).append(",2026-03-01,50,28\n");
      for (int j = 1; j <= 4; j++) {
        for (double grains : new double[] {350, 450, 550, 700}) {
          for (int i = 0; i < 8; i++) {
            double fps = bow.fps(grains) * (1 + 0.002 * random.nextGaussian());
            shots.append(
                String.format(
                    Locale.ROOT, "%s,A%.0f,%.2f,2026-05-%02d%n", bow.name(), grains, fps, j));
          }
        }
      }
    }
    season.take(SheetKind.BOWS, bows.toString());
    season.take(SheetKind.ARROWS, "arrow,mass_gr\nA350,350\nA450,450\nA550,550\nA700,700\n");
    season.take(SheetKind.SHOTS, shots.toString());
  }

  @AfterEach
  void close() {
    season.close();
  }

  @Test
  void isToldAsNoFigure() {
    for (TrueBow bow : BOWS) {
      BowReportView told = season.read(t -> bow(t, bow.name()));
      AnyDayView pair = told.anyDay().orElseThrow();
      pair.virtualMassGr().ifPresent(gr -> assertThat(gr).isPositive());
      pair.virtualMassCi95Gr().low().ifPresent(gr -> assertThat(gr).isNotNegative());
      pair.virtualMassCi95Gr().high().ifPresent(gr -> assertThat(gr).isPositive());
      told.virtualMassRepeats()
          .ifPresent(alone -> assertThat(alone.virtualMassGr().orElseThrow()).isPositive());
      assertThat(String.join(" ", told.sentences())).doesNotContainPattern("-\\d+(\\.\\d+)? gr");
    }
    assertThat(season.read(t -> bow(t, "Yew")).anyDay().orElseThrow().virtualMassGr()).isEmpty();
  }

  private static BowReportView bow(Transaction t, String name) {
    ReportRequest request = ReportRequest.of(10, 0.5);
    return BowReport.of(t, TypedSeason.ZONE, name, Optional.empty(), request).data();
  }

  @Test
  void isNoReasonNotToAnswerForTheRack() {
    List<Wanted> all =
        List.of(
            new ReachReport.KineticEnergy(20),
            new ReachReport.KineticEnergy(50),
            new ReachReport.KineticEnergy(500),
            new ReachReport.Momentum(1.5),
            new ReachReport.Momentum(2.5),
            new ReachReport.Like("Ash", "A450", Yardstick.energy));
    for (Wanted wanted : all) {
      ReachReportView told = season.read(t -> ReachReport.of(t, TypedSeason.ZONE, wanted).data());
      assertThat(told.reach()).extracting(ReachedView::bow).containsExactly("Ash", "Elm", "Yew");
      assertThat(told.reach()).extracting(ReachedView::verdict).doesNotContain("");
      told.reach().forEach(row -> row.massGr().ifPresent(gr -> assertThat(gr).isPositive()));
    }
  }
}
