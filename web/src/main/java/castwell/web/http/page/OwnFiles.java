package castwell.web.http.page;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Scripts, styles and pictures of our own. Jetty's own handler would open the program's jar as a
 * file system, twice, and keep 14 MB of names for these few.
 */
public final class OwnFiles {
  private static final String FOLDER = "/castwell/web/page/";
  private static final Pattern NAME = Pattern.compile("[a-z]+\\.(js|css|svg)");

  private final Map<String, Unchanging> read = new ConcurrentHashMap<>();

  /** After all other routes: what is no file is nothing at all. */
  public void route(JavalinConfig config) {
    config.routes.get("/{file}", this::answer);
    config.routes.head("/{file}", this::answer);
  }

  private void answer(Context ctx) {
    Matcher name = NAME.matcher(ctx.pathParam("file"));
    if (!name.matches()) {
      throw new NotFoundResponse();
    }
    MediaType type = MediaType.of(name.group(1)).orElseThrow();
    Unchanging file = read.computeIfAbsent(name.group(), n -> read(n, type)); // null: none
    if (file == null) {
      throw new NotFoundResponse();
    }
    file.answer(ctx);
  }

  private static Unchanging read(String name, MediaType type) {
    return Resource.read(FOLDER + name)
        .map(bytes -> new Unchanging(type, new String(bytes, StandardCharsets.UTF_8)))
        .orElse(null);
  }
}
