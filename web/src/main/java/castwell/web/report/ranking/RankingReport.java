package castwell.web.report.ranking;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.CastRanking;
import castwell.analysis.compare.CastRanking.Entry;
import castwell.analysis.compare.CastRanking.Pair;
import castwell.analysis.compare.Features;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Transaction;
import castwell.capture.view.report.ranking.FeatureView;
import castwell.capture.view.report.ranking.LeftOutView;
import castwell.capture.view.report.ranking.PairView;
import castwell.capture.view.report.ranking.RankedBow;
import castwell.capture.view.report.ranking.RankingReportView;
import castwell.capture.word.Rounded;
import castwell.web.report.BowCells;
import castwell.web.report.DayWords;
import castwell.web.report.GatesWords;
import castwell.web.report.Report;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.ReportTable;
import castwell.web.report.SpeedNote;
import castwell.web.report.Trade;
import castwell.web.report.bow.BowReport;
import castwell.web.report.ranking.Standings.Standing;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The rack by cast at so many grains per pound, and which bows can't be told apart. */
public final class RankingReport {
  private static final ReportFormat SAYING = ReportFormat.TRADE;

  private static final List<ReportColumn<RankedBow>> BOWS =
      List.of(
          ReportColumn.text("bow", "bow", RankedBow::bow),
          new ReportColumn<>("draw_weight_lb", "draw lb", 1, RankedBow::drawWeightLb),
          new ReportColumn<>("n", "n", 0, RankedBow::n),
          new ReportColumn<>("mass_gr", "mass gr", 0, row -> row.cast().massGr()),
          new ReportColumn<>("speed_fps", "any day ft/s", 1, row -> row.cast().speedFps()),
          new ReportColumn<>(
              "ci95_any_day_fps", "95 % any day", 1, row -> row.cast().ci95AnyDayFps()),
          new ReportColumn<>("today_fps", "last day ft/s", 1, row -> row.cast().todayFps()),
          new ReportColumn<>(
              "ci95_today_fps", "95 % that day", 1, row -> row.cast().ci95TodayFps()),
          ReportColumn.text("groups", "group", RankedBow::groups),
          ReportColumn.text("speed_at", "speed at", row -> row.cast().speedAt()));

  private static final List<ReportColumn<PairView>> PAIRS =
      List.of(
          ReportColumn.text("faster", "faster", PairView::faster),
          ReportColumn.text("slower", "slower", PairView::slower),
          new ReportColumn<>("difference_fps", "by ft/s", 1, PairView::differenceFps),
          new ReportColumn<>("ci_holm_fps", "interval by Holm", 1, PairView::ciHolmFps),
          new ReportColumn<>("p_holm", "p (Holm)", 3, PairView::pHolm),
          new ReportColumn<>("differ", "differ", 0, PairView::differ));

  private static final List<ReportColumn<FeatureView>> FEATURES =
      List.of(
          ReportColumn.text("feature", "feature", FeatureView::feature),
          new ReportColumn<>("n", "n", 0, FeatureView::n),
          new ReportColumn<>(
              "rank_correlation", "rank correlation", 2, FeatureView::rankCorrelation),
          new ReportColumn<>("p", "p", 3, FeatureView::p),
          new ReportColumn<>("exact", "exact", 0, FeatureView::exact));

  private final ZoneId zone;
  private final ReportRequest request;
  private final Standings standings;
  private final Transaction t;

  private RankingReport(Transaction t, ZoneId zone, ReportRequest request) {
    this.zone = zone;
    this.request = request;
    this.t = t;
    this.standings = Standings.of(t, zone, request);
  }

  public static Report<RankingReportView> of(Transaction t, ZoneId zone, ReportRequest request) {
    return new RankingReport(t, zone, request).report(t);
  }

  private Report<RankingReportView> report(Transaction t) {
    CastRanking ranking = standings.ranking();
    List<RankedBow> bows = bows(ranking);
    List<PairView> pairs = ranking.pairs().stream().map(RankingReport::pair).toList();
    List<FeatureView> features = features();
    List<String> sentences = new ArrayList<>(speeds().in(sentences(ranking, features), t, SAYING));
    sentences.addAll(1, GatesWords.of(t, sessions(t), SAYING));
    return new Report<>(
        sentences,
        List.of(
            new ReportTable<>("Cast at %s grains per pound".formatted(gpp()), BOWS, bows),
            new ReportTable<>("Pairs", PAIRS, pairs),
            new ReportTable<>("What goes with cast", FEATURES, features)),
        new RankingReportView(
            request.gpp(), sentences, bows, pairs, ranking.groups(), features, leftOut()));
  }

  private List<String> sessions(Transaction t) {
    BowCells bowCells = new BowCells(t, zone);
    return standings.ranked().stream()
        .flatMap(bow -> bowCells.lastSessions(bow.state()).stream())
        .sorted()
        .toList();
  }

  private SpeedNote speeds() {
    return SpeedNote.ofBows(standings.ranked().stream().map(Standing::cells));
  }

  private String gpp() {
    return Rounded.to(0, request.gpp());
  }

  private List<LeftOutView> leftOut() {
    return standings.leftOut().stream()
        .map(
            bow ->
                new LeftOutView(bow.state().bow(), SAYING.say("report.ranking.too_few", bow.n())))
        .toList();
  }

  private List<RankedBow> bows(CastRanking ranking) {
    Map<String, String> letters = standings.letters();
    return ranking.bows().stream()
        .map(
            entry -> {
              Standing bow = standings.of(entry.bow()).orElseThrow();
              return new RankedBow(
                  entry.bow(),
                  bow.stateName(),
                  bow.state().drawWeightN() / NEWTONS_PER_POUND,
                  bow.n(),
                  BowReport.casts(bow.cast().orElseThrow(), bow.cells().areAtBow()),
                  letters.get(entry.bow()));
            })
        .toList();
  }

  private static PairView pair(Pair pair) {
    return new PairView(
        pair.faster(),
        pair.slower(),
        Trade.value(METRES_PER_FOOT, pair.differenceMps()),
        Trade.ci95(METRES_PER_FOOT, pair.differenceMps()),
        pair.coverage(),
        Trade.value(0.01, pair.share()),
        pair.adjustedP(),
        pair.differs());
  }

  private List<FeatureView> features() {
    List<Features.Bow> bows =
        standings.ranked().stream()
            .map(
                r -> {
                  Measures<BowMeasure> m = r.state().measures();
                  return new Features.Bow(
                      r.cast().orElseThrow().anyDayMps().value(),
                      m.number(BowMeasure.NOCK_TO_NOCK),
                      m.number(BowMeasure.STRING_FOLLOW),
                      m.number(BowMeasure.TIP_WIDTH),
                      m.number(BowMeasure.MASS),
                      m.words(BowMeasure.WOOD));
                })
            .toList();
    return Features.of(bows).stream()
        .map(
            finding ->
                new FeatureView(
                    finding.feature(),
                    finding.n(),
                    Trade.finite(finding.rho()),
                    finding.pValue(),
                    finding.exact()))
        .toList();
  }

  private List<String> sentences(CastRanking ranking, List<FeatureView> features) {
    List<String> sentences = new ArrayList<>();
    if (ranking.bows().isEmpty()) {
      sentences.add(SAYING.say("report.ranking.none"));
    } else {
      sentences.add(first(ranking));
    }
    ranking.groups().stream()
        .filter(group -> group.size() > 1)
        .forEach(group -> sentences.add(SAYING.say("report.ranking.alike", SAYING.and(group))));
    standings.ranked().stream()
        .flatMap(bow -> bow.anyDay().stream())
        .findFirst()
        .ifPresent(bow -> sentences.addAll(DayWords.of(bow.season(), SAYING)));
    if (!standings.leftOut().isEmpty()) {
      sentences.add(
          SAYING.say(
              "report.ranking.left_out",
              standings.leftOut().stream()
                  .map(bow -> bow.state().bow())
                  .collect(Collectors.joining(", "))));
    }
    if (!features.isEmpty()) {
      sentences.add(SAYING.say("report.ranking.no_causes", standings.ranked().size()));
    }
    return sentences;
  }

  private String first(CastRanking ranking) {
    Entry best = ranking.bows().get(0);
    double massKg = standings.of(best.bow()).flatMap(Standing::cast).orElseThrow().massKg();
    boolean alone =
        ranking.groups().stream().allMatch(g -> !g.contains(best.bow()) || g.size() == 1);
    return SAYING.say(
        alone || ranking.bows().size() == 1
            ? "report.ranking.fastest"
            : "report.ranking.fastest_unsure",
        gpp(),
        best.bow(),
        SAYING.said(SPEED, 1, best.castMps(Trade.COVERAGE)),
        SAYING.plain(ARROW_MASS, 0, massKg));
  }
}
