package castwell.web.http;

import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.web.text.Speech;
import castwell.web.text.Texts;
import castwell.web.unit.UnitSystem;
import castwell.web.workbench.Asked;
import castwell.web.workbench.BowPage;
import castwell.web.workbench.CardPage;
import castwell.web.workbench.Frame;
import castwell.web.workbench.Page;
import castwell.web.workbench.Printing;
import castwell.web.workbench.RackPage;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Function;

/** The pages that look into the store, each made of one reading of it. */
final class WorkbenchPages {
  private static final String UNITS = "castwell-units";

  private final Printing printing = new Printing();
  private final Texts texts = Texts.english();
  private final Store store;
  private final Clock clock;
  private final ZoneId zone;
  private final Gatekeeper gate;
  private final boolean rehearsal;

  WorkbenchPages(Store store, Clock clock, ZoneId zone, Gatekeeper gate, boolean rehearsal) {
    this.store = store;
    this.clock = clock;
    this.zone = zone;
    this.gate = gate;
    this.rehearsal = rehearsal;
  }

  void route(JavalinConfig config) {
    page(config, "/rack", RackPage::of);
    page(config, "/bows/{name}", BowPage::of);
    page(config, "/bows/{name}/card", CardPage::of);
  }

  private void page(JavalinConfig config, String path, Function<Asked, Page> maker) {
    config.routes.get(path, ctx -> ctx.html(store.read(t -> html(ctx, t, maker))));
  }

  private String html(Context ctx, Transaction t, Function<Asked, Page> maker) {
    ctx.header("Cache-Control", "no-cache");
    Speech speech = new Speech(texts, units(ctx));
    Page page =
        maker.apply(
            new Asked(t, speech, zone, clock.instant(), ctx.pathParamMap(), ctx.queryParamMap()));
    Frame frame =
        new Frame(
            page.room(),
            page.title(),
            t.feed().last(),
            gate.mayChange(ctx),
            rehearsal,
            Version.TEXT,
            speech);
    return printing.html(page, frame);
  }

  /** The browser keeps what its person chose. */
  private static UnitSystem units(Context ctx) {
    return Optional.ofNullable(ctx.cookie(UNITS)).flatMap(UnitSystem::of).orElse(UnitSystem.TRADE);
  }
}
