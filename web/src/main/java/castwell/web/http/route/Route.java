package castwell.web.http.route;

import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;

/**
 * One route: who answers it, and what the API's own document says of it.
 *
 * @param request the shape that is sent, if any
 */
public record Route(
    HandlerType method,
    String path,
    String summary,
    List<Query> queries,
    Optional<Class<?>> request,
    Answer answer,
    Handler handler) {

  /** What may be asked with, after the path's question mark. */
  public record Query(String name, String meaning, Kind kind) {
    /** A number, a text, or as many texts as one likes. */
    public enum Kind {
      NUMBER,
      TEXT,
      TEXTS
    }
  }

  /** What comes back when nothing is wrong. */
  public sealed interface Answer {
    HttpStatus status();
  }

  /** A shape, or a list of it. */
  record Shape(HttpStatus status, Class<?> shape, boolean isList) implements Answer {}

  /**
   * Something that is no shape of ours.
   *
   * @param type by its name in JSON Schema
   */
  record Other(HttpStatus status, String type, List<String> contentTypes) implements Answer {}

  /** Nothing but its status. */
  record Empty(HttpStatus status) implements Answer {}

  public static Asking get(String path, String summary) {
    return new Asking(HandlerType.GET, path, summary);
  }

  public static Asking post(String path, String summary) {
    return new Asking(HandlerType.POST, path, summary);
  }

  public static Asking put(String path, String summary) {
    return new Asking(HandlerType.PUT, path, summary);
  }

  public static Asking delete(String path, String summary) {
    return new Asking(HandlerType.DELETE, path, summary);
  }
}
