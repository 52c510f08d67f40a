package castwell.web.http.page;

import castwell.capture.view.Json;
import castwell.web.text.Texts;
import castwell.web.workbench.Printing;
import io.javalin.config.JavalinConfig;

/** The pages that scripts fill in, and what the scripts say and go by. */
public final class LivePages {
  private static final String SAID_BY_SCRIPTS = "live.";

  private final Printing printing = new Printing();
  private final Texts texts = Texts.chosen();

  public void route(JavalinConfig config) {
    serve(config, "/", page("range"));
    serve(config, "/gates.html", page("gates"));
    serve(config, "/enter", page("enter"));
    serve(config, "/texts.js", new Unchanging(MediaType.JS, module()));
    serve(config, "/rules.js", new Unchanging(MediaType.JS, FigureRules.module(texts)));
  }

  private Unchanging page(String template) {
    return new Unchanging(MediaType.HTML, printing.html(template, texts));
  }

  private String module() {
    return "export default " + Json.text(texts.all(SAID_BY_SCRIPTS)) + ";\n";
  }

  private static void serve(JavalinConfig config, String path, Unchanging what) {
    config.routes.get(path, what::answer);
    config.routes.head(path, what::answer);
  }
}
