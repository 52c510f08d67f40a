package castwell.web.workbench;

import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import castwell.web.text.Speech;
import castwell.web.text.Texts;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Predicate;

/** What all pages are made with: each is one reading of the store, put into its template. */
public final class Pages {
  private final TemplateEngine templates =
      TemplateEngine.createPrecompiled(null, ContentType.Html, null, "castwell.web.jte");
  private final Texts texts = Texts.english();
  private final Store store;
  private final Clock clock;
  private final ZoneId zone;
  private final Predicate<Context> mayChange;
  private final boolean rehearsal;
  private final String version;

  /**
   * @param mayChange whether changes are taken from whoever asks
   */
  public Pages(
      Store store,
      Clock clock,
      ZoneId zone,
      Predicate<Context> mayChange,
      boolean rehearsal,
      String version) {
    this.store = store;
    this.clock = clock;
    this.zone = zone;
    this.mayChange = mayChange;
    this.rehearsal = rehearsal;
    this.version = version;
  }

  Clock clock() {
    return clock;
  }

  ZoneId zone() {
    return zone;
  }

  /**
   * Answers with a page.
   *
   * @param template its file's name
   * @param title of the page
   * @param view what its template shows, made in one reading
   */
  void show(
      Context ctx,
      Room room,
      String template,
      String title,
      BiFunction<Transaction, Speech, Object> view) {
    Speech speech = Visitor.speech(ctx, texts);
    Map<String, Object> parts = new LinkedHashMap<>();
    store.read(
        t -> {
          parts.put("view", view.apply(t, speech));
          parts.put("frame", frame(ctx, room, title, t.feed().last(), speech));
          return parts;
        });
    StringOutput html = new StringOutput();
    templates.render(template + ".jte", parts, html);
    ctx.html(html.toString());
    ctx.header("Cache-Control", "no-cache");
  }

  private Frame frame(Context ctx, Room room, String title, long event, Speech speech) {
    String question = ctx.queryString();
    return new Frame(
        room,
        title,
        ctx.path() + (question == null ? "" : "?" + question),
        event,
        mayChange.test(ctx),
        rehearsal,
        version,
        speech);
  }
}
