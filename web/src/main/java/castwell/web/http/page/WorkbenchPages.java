package castwell.web.http.page;

import castwell.analysis.speed.Calibration;
import castwell.capture.command.Commands;
import castwell.capture.command.Refused;
import castwell.capture.daemon.Capture;
import castwell.capture.station.LinkState;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.web.http.guard.Gatekeeper;
import castwell.web.http.problem.Problems;
import castwell.web.settings.Version;
import castwell.web.text.Speech;
import castwell.web.text.Texts;
import castwell.web.unit.UnitSystem;
import castwell.web.workbench.ArrowsPage;
import castwell.web.workbench.BowPage;
import castwell.web.workbench.CalibrationPage;
import castwell.web.workbench.CardPage;
import castwell.web.workbench.DataPage;
import castwell.web.workbench.Frame;
import castwell.web.workbench.GatesTrial;
import castwell.web.workbench.Page;
import castwell.web.workbench.PageRequest;
import castwell.web.workbench.PlanPage;
import castwell.web.workbench.Printing;
import castwell.web.workbench.RackPage;
import castwell.web.workbench.ReachPage;
import castwell.web.workbench.ReworkPage;
import castwell.web.workbench.SessionPage;
import castwell.web.workbench.SessionsPage;
import castwell.web.workbench.TroublePage;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The pages that look into the store, each made of one reading of it. */
public final class WorkbenchPages {
  private static final String UNITS = "castwell-units";

  private final Printing printing = new Printing();
  private final Texts texts = Texts.chosen();
  private final Store store;
  private final Clock clock;
  private final ZoneId zone;
  private final Commands commands;
  private final Capture capture;
  private final Gatekeeper gate;
  private final boolean rehearsal;

  public WorkbenchPages(
      Store store,
      Clock clock,
      ZoneId zone,
      Commands commands,
      Capture capture,
      Gatekeeper gate,
      boolean rehearsal) {
    this.store = store;
    this.clock = clock;
    this.zone = zone;
    this.commands = commands;
    this.capture = capture;
    this.gate = gate;
    this.rehearsal = rehearsal;
  }

  public void route(JavalinConfig config) {
    page(config, "/rack", RackPage::of);
    page(config, "/bows/{name}", BowPage::of);
    page(config, "/bows/{name}/speed", BowPage::speed);
    page(config, "/bows/{name}/card", CardPage::of);
    page(config, "/arrows", ArrowsPage::of);
    page(config, "/sessions", SessionsPage::of);
    page(config, "/sessions/{name}", request -> SessionPage.of(request, trial()));
    page(config, "/rework", ReworkPage::of);
    page(config, "/reach", ReachPage::of);
    page(config, "/plan", PlanPage::of);
    page(config, "/calibration", CalibrationPage::of);
    page(config, "/data", DataPage::of);
  }

  private GatesTrial.OnTrial trial() {
    return new GatesTrial.OnTrial() {
      @Override
      public <T> T tryOut(
          String station,
          Instant from,
          Optional<Instant> to,
          Calibration gates,
          Function<Transaction, T> look) {
        return commands.tryCalibration(station, from, to, gates, look);
      }
    };
  }

  private void page(JavalinConfig config, String path, Function<PageRequest, Page> maker) {
    config.routes.get(
        path,
        ctx -> {
          ctx.header("Cache-Control", "no-cache");
          ctx.html(store.read(t -> html(ctx, t, maker)));
        });
  }

  private String html(Context ctx, Transaction t, Function<PageRequest, Page> maker) {
    Speech speech = new Speech(texts, units(ctx));
    Page page = page(ctx, maker, request(ctx, t, speech));
    Frame frame =
        new Frame(
            page.menuEntry(),
            page.title(),
            t.feed().last(),
            gate.mayChange(ctx),
            rehearsal,
            Version.TEXT,
            speech);
    return printing.html(page, frame);
  }

  private PageRequest request(Context ctx, Transaction t, Speech speech) {
    List<String> stations = capture.links().stream().map(LinkState::station).toList();
    return new PageRequest(
        t, speech, zone, clock.instant(), stations, ctx.pathParamMap(), ctx.queryParamMap());
  }

  /** What can't be shown is told on a page as well. */
  private static Page page(Context ctx, Function<PageRequest, Page> maker, PageRequest request) {
    try {
      return maker.apply(request);
    } catch (Refused refused) {
      ctx.status(Problems.status(refused));
      return TroublePage.of(request, request.speech().say(refused.phrase()));
    }
  }

  /** The browser keeps what its person chose. */
  private static UnitSystem units(Context ctx) {
    return Optional.ofNullable(ctx.cookie(UNITS)).flatMap(UnitSystem::of).orElse(UnitSystem.TRADE);
  }
}
