package castwell.web.http.route;

import castwell.capture.view.Json;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.stream.Stream;

/** All routes of the API, with the document that tells them. */
public final class Routes {
  private static final String JSON = "application/json";

  private final List<Route> routes;
  private final String version;

  /** Made when somebody first asks for it: it takes a moment, and few ever do. */
  private String document;

  private Routes(Stream<Route> routes, String version) {
    Route itself = Route.get("/api/openapi.json", "This document").documents(this::document, JSON);
    this.routes = Stream.concat(routes, Stream.of(itself)).toList();
    this.version = version;
  }

  /**
   * @param version the program's
   */
  public static Routes of(String version, Stream<List<Route>> parts) {
    return new Routes(parts.flatMap(List::stream), version);
  }

  public void register(JavalinConfig config) {
    routes.forEach(
        route -> config.routes.addHttpHandler(route.method(), route.path(), route.handler()));
  }

  private synchronized void document(Context ctx) {
    if (document == null) {
      document = Json.text(new ApiDocument(routes, version).made());
    }
    ctx.result(document).contentType(JSON);
  }
}
