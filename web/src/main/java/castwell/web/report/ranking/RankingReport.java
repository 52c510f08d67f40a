package castwell.web.report.ranking;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.web.unit.Dimension.ARROW_MASS;
import static castwell.web.unit.Dimension.SPEED;

import castwell.analysis.compare.Features;
import castwell.analysis.compare.Ranking;
import castwell.analysis.compare.Ranking.Entry;
import castwell.analysis.compare.Ranking.Pair;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Transaction;
import castwell.capture.word.Rounded;
import castwell.web.report.Fields;
import castwell.web.report.Report;
import castwell.web.report.ReportColumn;
import castwell.web.report.ReportFormat;
import castwell.web.report.ReportRequest;
import castwell.web.report.ReportTable;
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

  private static final List<ReportColumn> BOWS =
      List.of(
          ReportColumn.text("bow", "bow"),
          new ReportColumn("draw_weight_lb", "draw lb", 1),
          new ReportColumn("n", "n", 0),
          new ReportColumn("mass_gr", "mass gr", 0),
          new ReportColumn("speed_fps", "cast ft/s", 1),
          new ReportColumn("ci95_fps", "95 % ft/s", 1),
          new ReportColumn("ci95_with_scale_fps", "with scale ft/s", 1),
          ReportColumn.text("groups", "group"));

  private static final List<ReportColumn> PAIRS =
      List.of(
          ReportColumn.text("faster", "faster"),
          ReportColumn.text("slower", "slower"),
          new ReportColumn("difference_fps", "by ft/s", 1),
          new ReportColumn("ci95_fps", "95 % ft/s", 1),
          new ReportColumn("p_holm", "p (Holm)", 3),
          new ReportColumn("differ", "differ", 0));

  private static final List<ReportColumn> FEATURES =
      List.of(
          ReportColumn.text("feature", "feature"),
          new ReportColumn("n", "n", 0),
          new ReportColumn("rank_correlation", "rank correlation", 2),
          new ReportColumn("p", "p", 3),
          new ReportColumn("exact", "exact", 0));

  private final ReportRequest request;
  private final Standings standings;

  private RankingReport(Transaction t, ZoneId zone, ReportRequest request) {
    this.request = request;
    this.standings = Standings.of(t, zone, request);
  }

  public static Report of(Transaction t, ZoneId zone, ReportRequest request) {
    return new RankingReport(t, zone, request).report();
  }

  private Report report() {
    Ranking ranking = standings.ranking();
    List<Map<String, Object>> bows = bows(ranking);
    List<Map<String, Object>> pairs = ranking.pairs().stream().map(RankingReport::pair).toList();
    List<Map<String, Object>> features = features();
    List<String> sentences = sentences(ranking, features);
    return new Report(
        sentences,
        List.of(
            new ReportTable("Cast at %s grains per pound".formatted(gpp()), BOWS, bows),
            new ReportTable("Pairs", PAIRS, pairs),
            new ReportTable("What goes with cast", FEATURES, features)),
        new Fields()
            .put("gpp", request.gpp())
            .put("sentences", sentences)
            .put("ranking", bows)
            .put("pairs", pairs)
            .put("groups", ranking.groups())
            .put("features", features)
            .put("left_out", leftOut())
            .map());
  }

  private String gpp() {
    return Rounded.to(0, request.gpp());
  }

  private List<Map<String, Object>> leftOut() {
    return standings.leftOut().stream()
        .map(
            bow ->
                new Fields()
                    .put("bow", bow.state().bow())
                    .put("reason", SAYING.say("report.ranking.too_few", bow.n()))
                    .map())
        .toList();
  }

  private List<Map<String, Object>> bows(Ranking ranking) {
    Map<String, String> letters = standings.letters();
    return ranking.bows().stream()
        .map(
            entry -> {
              Standing bow = standings.of(entry.bow()).orElseThrow();
              return new Fields()
                  .put("bow", entry.bow())
                  .put("state_on", bow.stateName())
                  .put("draw_weight_lb", bow.state().drawWeightN() / NEWTONS_PER_POUND)
                  .put("n", bow.n())
                  .putAll(BowReport.casts(bow.cast().orElseThrow()).map())
                  .put("groups", letters.get(entry.bow()))
                  .map();
            })
        .toList();
  }

  private static Map<String, Object> pair(Pair pair) {
    Quantity difference = pair.differenceMps();
    return new Fields()
        .put("faster", pair.faster())
        .put("slower", pair.slower())
        .put("difference_fps", Trade.value(METRES_PER_FOOT, difference))
        .put("ci95_fps", Trade.ci95(METRES_PER_FOOT, difference))
        .put("p", difference.pValue())
        .put("p_holm", pair.adjustedP())
        .put("differ", pair.differs())
        .map();
  }

  private List<Map<String, Object>> features() {
    List<Features.Bow> bows =
        standings.ranked().stream()
            .map(
                r -> {
                  Measures<BowMeasure> m = r.state().measures();
                  return new Features.Bow(
                      r.cast().orElseThrow().speedMps().value(),
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
                new Fields()
                    .put("feature", finding.feature())
                    .put("n", finding.n())
                    .put("rank_correlation", Trade.finite(finding.rho()))
                    .put("p", finding.pValue())
                    .put("exact", finding.exact())
                    .map())
        .toList();
  }

  private List<String> sentences(Ranking ranking, List<Map<String, Object>> features) {
    List<String> sentences = new ArrayList<>();
    if (ranking.bows().isEmpty()) {
      sentences.add(SAYING.say("report.ranking.none"));
    } else {
      sentences.add(first(ranking));
    }
    ranking.groups().stream()
        .filter(group -> group.size() > 1)
        .forEach(group -> sentences.add(SAYING.say("report.ranking.alike", SAYING.and(group))));
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

  private String first(Ranking ranking) {
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
        SAYING.said(SPEED, 1, best.castMps()),
        SAYING.plain(ARROW_MASS, 0, massKg));
  }
}
