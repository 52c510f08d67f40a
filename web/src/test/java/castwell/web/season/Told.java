package castwell.web.season;

import castwell.analysis.unit.Units;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.view.report.bow.BowReportView;
import castwell.capture.view.report.ranking.RankingReportView;
import castwell.capture.view.report.reach.ReachReportView;
import castwell.capture.view.report.rework.ReworkReportView;
import castwell.capture.view.report.session.SessionReportView;
import castwell.web.report.ReportRequest;
import castwell.web.report.TypedSeason;
import castwell.web.report.bow.BowReport;
import castwell.web.report.ranking.RankingReport;
import castwell.web.report.reach.ReachReport;
import castwell.web.report.rework.ReworkReport;
import castwell.web.report.rework.ReworkReport.Question;
import castwell.web.report.session.SessionReport;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What reports say of a season that was taken in from its sheets.
 *
 * @param bow of the first, as it is after its rework
 * @param leftAlone of a bow that nothing was done to, its first session against its last
 */
record Told(
    ReworkReportView rework,
    Optional<ReworkReportView> leftAlone,
    BowReportView bow,
    RankingReportView ranking,
    ReachReportView reach,
    List<SessionReportView> sessions) {

  /**
   * @param reachFtlbf the energy that bows are asked to reach
   * @param scaleULb standard uncertainty of draw weights
   */
  static Told of(TrueSeason truth, Path folder, double reachFtlbf, double scaleULb) {
    try (TypedSeason store = new TypedSeason(folder)) {
      store.take(SheetKind.BOWS, truth.bowSheet());
      store.take(SheetKind.ARROWS, truth.arrowSheet());
      store.take(SheetKind.SHOTS, truth.shots().csv());
      ReportRequest request = ReportRequest.of(ReportRequest.USUAL_GPP, scaleULb);
      return store.read(
          t -> {
            String ash = truth.reworked().name();
            Question asked = new Question(ash, TrueSeason.BEGAN, truth.reworkedOn(), List.of());
            List<SessionReportView> sessions = new ArrayList<>();
            for (String session : truth.sessions()) {
              sessions.add(SessionReport.of(t, TypedSeason.ZONE, Optional.of(session)).data());
            }
            return new Told(
                ReworkReport.of(t, TypedSeason.ZONE, asked, request).data(),
                leftAlone(truth)
                    .map(other -> ReworkReport.of(t, TypedSeason.ZONE, other, request).data()),
                BowReport.of(t, TypedSeason.ZONE, ash, Optional.empty(), request).data(),
                RankingReport.of(t, TypedSeason.ZONE, request).data(),
                ReachReport.of(
                        t, TypedSeason.ZONE, new ReachReport.KineticEnergy(joules(reachFtlbf)))
                    .data(),
                sessions);
          });
    }
  }

  private static double joules(double ftlbf) {
    return ftlbf * Units.JOULES_PER_FOOT_POUND;
  }

  private static Optional<Question> leftAlone(TrueSeason truth) {
    List<String> sessions = truth.sessions();
    return truth.bows().size() < 2 || sessions.size() < 2
        ? Optional.empty()
        : Optional.of(
            new Question(
                truth.bows().get(1).name(),
                sessions.get(0),
                sessions.get(sessions.size() - 1),
                List.of()));
  }
}
