package castwell.web.http.route;

import castwell.capture.view.data.Problem;
import castwell.capture.view.schema.OpenApi;
import castwell.capture.view.schema.OpenApi.Content;
import castwell.capture.view.schema.OpenApi.Operation;
import castwell.capture.view.schema.OpenApi.Parameter;
import castwell.capture.view.schema.OpenApi.RequestBody;
import castwell.capture.view.schema.OpenApi.Response;
import castwell.capture.view.schema.Schema;
import castwell.capture.view.schema.Shapes;
import castwell.web.http.route.Route.Answer;
import castwell.web.http.route.Route.Query;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;

/** What the API can be asked, as a document: made of its routes, and of the shapes they tell. */
final class ApiDocument {
  private static final Pattern IN_PATH = Pattern.compile("\\{([a-z_]+)}");
  private static final String JSON = "application/json";
  private static final String PROBLEM = "application/problem+json";

  private static final String SHAPES = "components/schemas";

  private final Shapes shapes = new Shapes();
  private final List<Route> routes;
  private final String version;

  /**
   * @param version the program's
   */
  ApiDocument(List<Route> routes, String version) {
    this.routes = routes;
    this.version = version;
  }

  OpenApi made() {
    Map<String, Map<String, Operation>> paths = new TreeMap<>();
    for (Route route : routes) {
      paths
          .computeIfAbsent(route.path(), path -> new LinkedHashMap<>())
          .put(route.method().name().toLowerCase(Locale.ROOT), operation(route));
    }
    return new OpenApi(
        "3.1.1",
        new OpenApi.Info("Castwell", version, "what is shot, stored and concluded, in trade units"),
        paths,
        new OpenApi.Components(
            shapes.told(SHAPES),
            Map.of("key", new OpenApi.SecurityScheme("http", "bearer", "where it takes a key"))),
        List.of(Map.of(), Map.of("key", List.of())));
  }

  private Operation operation(Route route) {
    List<Parameter> parameters = new ArrayList<>();
    IN_PATH
        .matcher(route.path())
        .results()
        .map(found -> inPath(found.group(1)))
        .forEach(parameters::add);
    route.queries().stream().map(ApiDocument::inQuery).forEach(parameters::add);
    Map<String, Response> responses = new LinkedHashMap<>();
    responses.put(String.valueOf(route.answer().status().getCode()), response(route.answer()));
    responses.put("default", new Response("what went wrong", Map.of(PROBLEM, one(Problem.class))));
    return new Operation(
        route.summary(),
        parameters,
        route.request().map(shape -> new RequestBody(true, Map.of(JSON, one(shape)))),
        responses);
  }

  private static Parameter inPath(String name) {
    return new Parameter(name, "path", "which " + name, true, Schema.of("string"));
  }

  private static Parameter inQuery(Query query) {
    Schema schema =
        switch (query.kind()) {
          case NUMBER -> Schema.of("number");
          case TEXT -> Schema.of("string");
          case TEXTS -> Schema.listOf(Schema.of("string"));
        };
    return new Parameter(query.name(), "query", query.meaning(), false, schema);
  }

  private Response response(Answer answer) {
    if (answer instanceof Route.Shape shape) {
      Content content =
          shape.isList()
              ? new Content(Schema.listOf(shapes.one(shape.shape())))
              : one(shape.shape());
      return new Response("as it is", Map.of(JSON, content));
    } else if (answer instanceof Route.Other other) {
      Map<String, Content> contents = new LinkedHashMap<>();
      other
          .contentTypes()
          .forEach(type -> contents.put(type, new Content(Schema.of(other.type()))));
      return new Response("as it is", contents);
    }
    return new Response("done", Map.of());
  }

  private Content one(Class<?> shape) {
    return new Content(shapes.one(shape));
  }
}
