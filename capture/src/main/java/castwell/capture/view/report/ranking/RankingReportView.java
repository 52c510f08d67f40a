package castwell.capture.view.report.ranking;

import castwell.capture.view.Meaning;
import java.util.List;

/** The rack's bows, ranked by cast. */
public record RankingReportView(
    double gpp,
    List<String> sentences,
    List<RankedBow> ranking,
    List<PairView> pairs,
    @Meaning("bows that can't be told apart") List<List<String>> groups,
    List<FeatureView> features,
    List<LeftOutView> leftOut) {}
