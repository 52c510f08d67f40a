package castwell.web.http.page;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;

/**
 * The one script that is others' work, which draws the charts: served by us, and kept by browsers.
 */
public final class Library {
  private static final String PATH = "/lib/d3-7.9.0.min.js";
  private static final String RESOURCE = "/META-INF/resources/webjars/d3/7.9.0/dist/d3.min.js";
  private static final String A_YEAR = "public, max-age=31536000, immutable";

  private final byte[] script;

  public Library() {
    script = Resource.read(RESOURCE).orElseThrow();
  }

  public void route(JavalinConfig config) {
    config.routes.get(PATH, this::answer);
  }

  private void answer(Context ctx) {
    ctx.header("Cache-Control", A_YEAR);
    ctx.contentType("text/javascript");
    ctx.result(script);
  }
}
