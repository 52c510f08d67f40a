package castwell.web.http.route;

import castwell.capture.view.Request;
import castwell.web.http.route.Route.Answer;
import castwell.web.http.route.Route.Query;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;

/** A route as it is put together: what is asked first, then what is answered. */
public final class Asking {
  private final HandlerType method;
  private final String path;
  private final String summary;
  private final List<Query> queries = new ArrayList<>();

  public Asking(HandlerType method, String path, String summary) {
    this.method = method;
    this.path = path;
    this.summary = summary;
  }

  public Asking text(String name, String meaning) {
    return with(new Query(name, meaning, Query.Kind.TEXT));
  }

  public Asking texts(String name, String meaning) {
    return with(new Query(name, meaning, Query.Kind.TEXTS));
  }

  public Asking number(String name, String meaning) {
    return with(new Query(name, meaning, Query.Kind.NUMBER));
  }

  private Asking with(Query query) {
    queries.add(query);
    return this;
  }

  public <A> Route answers(Class<A> shape, Function<Context, A> answer) {
    return route(new Route.Shape(HttpStatus.OK, shape, false), ctx -> ctx.json(answer.apply(ctx)));
  }

  public <A> Route answersAll(Class<A> shape, Function<Context, List<A>> answer) {
    return route(new Route.Shape(HttpStatus.OK, shape, true), ctx -> ctx.json(answer.apply(ctx)));
  }

  /** Words, in one of these types. */
  public Route says(Handler handler, String... contentTypes) {
    return route(new Route.Other(HttpStatus.OK, "string", List.of(contentTypes)), handler);
  }

  /** A JSON document that isn't one of our own shapes. */
  public Route documents(Handler handler, String contentType) {
    return route(new Route.Other(HttpStatus.OK, "object", List.of(contentType)), handler);
  }

  /** Nothing is answered but that it was done. */
  public Route does(Consumer<Context> deed) {
    HttpStatus done = HttpStatus.NO_CONTENT;
    return route(
        new Route.Empty(done),
        ctx -> {
          deed.accept(ctx);
          ctx.status(done);
        });
  }

  public <Q extends Record & Request> Taking<Q> takes(Class<Q> request) {
    return takes(request, Body.LARGEST);
  }

  /**
   * @param largest how many bytes the request may have
   */
  public <Q extends Record & Request> Taking<Q> takes(Class<Q> request, int largest) {
    return new Taking<>(request, largest);
  }

  private Route route(Answer answer, Handler handler) {
    return new Route(
        method, path, summary, List.copyOf(queries), Optional.empty(), answer, handler);
  }

  /** A route to which something is sent. */
  public final class Taking<Q extends Record & Request> {
    private final Class<Q> request;
    private final int largest;

    private Taking(Class<Q> request, int largest) {
      this.request = request;
      this.largest = largest;
    }

    public <A> Route answers(Class<A> shape, BiFunction<Context, Q, A> answer) {
      return route(HttpStatus.OK, shape, (ctx, sent) -> Optional.of(answer.apply(ctx, sent)));
    }

    public <A> Route creates(Class<A> shape, BiFunction<Context, Q, A> answer) {
      return mayCreate(shape, (ctx, sent) -> Optional.of(answer.apply(ctx, sent)));
    }

    /** Nothing is answered where a refusal was written already. */
    public <A> Route mayCreate(Class<A> shape, BiFunction<Context, Q, Optional<A>> answer) {
      return route(HttpStatus.CREATED, shape, answer);
    }

    private <A> Route route(
        HttpStatus status, Class<A> shape, BiFunction<Context, Q, Optional<A>> answer) {
      return new Route(
          method,
          path,
          summary,
          List.copyOf(queries),
          Optional.of(request),
          new Route.Shape(status, shape, false),
          ctx ->
              answer
                  .apply(ctx, Body.of(ctx, largest, request))
                  .ifPresent(made -> ctx.status(status).json(made)));
    }
  }
}
