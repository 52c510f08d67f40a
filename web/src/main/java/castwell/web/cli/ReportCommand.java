package castwell.web.cli;

import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.web.report.Report;
import castwell.web.report.ReportRequest;
import castwell.web.report.ReportWriter;
import castwell.web.report.bow.BowReport;
import castwell.web.report.plan.PlanReport;
import castwell.web.report.plan.Wish;
import castwell.web.report.ranking.RankingReport;
import castwell.web.report.reach.ReachReport;
import castwell.web.report.reach.Yardstick;
import castwell.web.report.rework.ReworkReport;
import castwell.web.report.session.SessionReport;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

@Command(
    name = "report",
    description = "Say what the speeds say: a sentence first, then the figures.")
final class ReportCommand implements Runnable {
  private static final ZoneId ZONE = ZoneId.systemDefault();

  @Spec private CommandSpec spec;
  @ParentCommand private Castwell castwell;

  @Option(
      names = "--format",
      scope = ScopeType.INHERIT,
      description = "text, json, or csv (the first table). Default: text.")
  private ReportWriter.Format format = ReportWriter.Format.text;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      scope = ScopeType.INHERIT,
      description = "Write to a file.")
  private Path out;

  @Option(
      names = "--gpp",
      paramLabel = "NUMBER",
      scope = ScopeType.INHERIT,
      description = "Grains per pound at which casts are told. Default: 10.")
  private double gpp = ReportRequest.USUAL_GPP;

  @Option(
      names = "--scale-u-lb",
      paramLabel = "POUNDS",
      scope = ScopeType.INHERIT,
      description = "Standard uncertainty of the draw weight's scale. Default: 0.5.")
  private double scaleULb = ReportRequest.USUAL_SCALE_U_LB;

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "Say which report: bow, ranking, reach, rework, plan or session");
  }

  private ReportRequest request() {
    return ReportRequest.of(gpp, scaleULb);
  }

  private void write(Function<Transaction, Report<?>> make) throws IOException {
    Report<?> report;
    try (Store store = Store.openToRead(castwell.data().orDefault())) {
      report = store.read(make);
    }
    if (out == null) {
      ReportWriter.write(
          report, format, new OutputStreamWriter(System.out, StandardCharsets.UTF_8));
    } else {
      try (Writer file = Files.newBufferedWriter(out)) {
        ReportWriter.write(report, format, file);
      }
    }
  }

  @Command(
      name = "bow",
      description = "One bow: its cells, both curves, cast, energy and what to shoot next.")
  void bow(
      @Parameters(paramLabel = "NAME") String name,
      @Option(
              names = "--state",
              paramLabel = "DATE",
              description = "As it was since then; as it is now otherwise.")
          Optional<String> state)
      throws IOException {
    ReportRequest request = request();
    write(t -> BowReport.of(t, ZONE, name, state, request));
  }

  @Command(name = "ranking", description = "The bows by cast, and which can't be told apart.")
  void ranking() throws IOException {
    ReportRequest request = request();
    write(t -> RankingReport.of(t, ZONE, request));
  }

  @Command(
      name = "reach",
      description = "The least arrow of every bow that carries a momentum or an energy.")
  void reach(
      @Option(names = "--momentum-slug-fps", paramLabel = "NUMBER") Double momentum,
      @Option(names = "--energy-ftlbf", paramLabel = "NUMBER") Double energy,
      @Option(
              names = "--like-bow",
              paramLabel = "BOW",
              description = "What this bow gives the arrow of --like-arrow.")
          String likeBow,
      @Option(names = "--like-arrow", paramLabel = "ARROW") String likeArrow,
      @Option(
              names = "--yardstick",
              defaultValue = "momentum",
              description = "With --like-bow: momentum or energy. Default: momentum.")
          Yardstick yardstick)
      throws IOException {
    ReachReport.Wanted wanted =
        ReachReport.Wanted.of(
            Optional.ofNullable(momentum),
            Optional.ofNullable(energy),
            Optional.ofNullable(likeBow),
            Optional.ofNullable(likeArrow),
            yardstick);
    write(t -> ReachReport.of(t, ZONE, wanted));
  }

  @Command(name = "rework", description = "Whether a rework helped, and what of it was the day.")
  void rework(
      @Parameters(paramLabel = "BOW") String bow,
      @Option(
              names = "--before",
              required = true,
              paramLabel = "WHEN",
              description =
                  "A state (since when the bow was so), a session, or a date; state:NAME or"
                      + " session:NAME where both are called alike.")
          String before,
      @Option(names = "--after", required = true, paramLabel = "WHEN", description = "Likewise.")
          String after,
      @Option(
              names = "--control",
              paramLabel = "BOW",
              description =
                  "A bow left as it was, shot before and after; several may be named, and then only"
                      + " those count. All that help otherwise.")
          List<String> controls)
      throws IOException {
    ReportRequest request = request();
    ReworkReport.Question question =
        new ReworkReport.Question(
            bow, before, after, controls == null ? List.of() : List.copyOf(controls));
    write(t -> ReworkReport.of(t, ZONE, question, request));
  }

  @Command(
      name = "plan",
      description = "How many sessions and shots see a change, and in which order.")
  void plan(
      @Parameters(paramLabel = "BOW") String bow,
      @Option(names = "--change-fps", description = "The change that should be seen. Default: 2.")
          Double changeFps,
      @Option(names = "--change-percent", description = "Or that, of the bow's speed.")
          Double changePercent,
      @Option(names = "--power", description = "How surely. Default: 0.8.") Double power,
      @Option(
              names = "--sd-fps",
              description = "One shot's scatter; the bow's own shots tell it otherwise.")
          Double sdFps,
      @Option(names = "--control", paramLabel = "BOW", description = "A bow that stays as it is.")
          List<String> controls,
      @Option(
              names = "--arrow",
              paramLabel = "ARROW",
              description = "An arrow to shoot; the three that tell most otherwise.")
          List<String> arrows,
      @Option(
              names = "--sessions",
              description = "How many before, and as many after, whose chance is asked for.")
          Double sessions,
      @Option(
              names = "--shots",
              description = "Of each arrow from each bow in a session, likewise.")
          Double shots,
      @Option(names = "--seed", description = "Of the order's shuffle. Default: 1.") Double seed)
      throws IOException {
    Wish wish =
        Wish.of(
            bow,
            controls == null ? List.of() : controls,
            given(changeFps),
            given(changePercent),
            given(power),
            given(sdFps),
            arrows == null ? List.of() : arrows,
            given(sessions),
            given(shots),
            given(seed));
    write(t -> PlanReport.of(t, ZONE, wish));
  }

  private static OptionalDouble given(Double number) {
    return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
  }

  @Command(
      name = "session",
      description = "One outing: cells, what was set aside, drift; the last one otherwise.")
  void session(@Parameters(paramLabel = "NAME", arity = "0..1") Optional<String> name)
      throws IOException {
    write(t -> SessionReport.of(t, ZONE, name));
  }
}
