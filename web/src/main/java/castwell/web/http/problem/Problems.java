package castwell.web.http.problem;

import castwell.capture.command.Refused;
import castwell.capture.store.StoreUnavailable;
import castwell.capture.view.data.Problem;
import castwell.web.text.Speech;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import org.slf4j.LoggerFactory;

/** What went wrong, as a JSON problem (RFC 9457). */
public final class Problems {
  private Problems() {}

  public static void route(JavalinConfig config) {
    config.routes.exception(
        Refused.class, (e, ctx) -> answer(ctx, status(e), Speech.TRADE.say(e.phrase())));
    config.routes.exception(
        StoreUnavailable.class, (e, ctx) -> answer(ctx, status(ctx), Speech.TRADE.say(e.phrase())));
    config.routes.exception(
        HttpResponseException.class,
        (e, ctx) -> answer(ctx, HttpStatus.forStatus(e.getStatus()), sentence(e, ctx)));
    config.routes.exception(
        Exception.class,
        (e, ctx) -> {
          LoggerFactory.getLogger(Problems.class).error("{} {}", ctx.method(), ctx.path(), e);
          answer(ctx, HttpStatus.INTERNAL_SERVER_ERROR, Speech.TRADE.say("refused.fault"));
        });
  }

  public static void answer(Context ctx, HttpStatus status, String detail) {
    answer(ctx, status, problem(status, detail));
  }

  public static Problem problem(HttpStatus status, String detail) {
    return Problem.of(status.getCode(), status.getMessage(), detail);
  }

  public static void answer(Context ctx, HttpStatus status, Problem problem) {
    ctx.status(status);
    ctx.json(problem);
    ctx.contentType("application/problem+json");
  }

  /** What can't be kept is told apart from what can't be read: RFC 4918, 11.5. */
  private static HttpStatus status(Context ctx) {
    boolean reads = ctx.method() == HandlerType.GET || ctx.method() == HandlerType.HEAD;
    return reads ? HttpStatus.SERVICE_UNAVAILABLE : HttpStatus.INSUFFICIENT_STORAGE;
  }

  public static HttpStatus status(Refused refused) {
    return switch (refused.why()) {
      case NOT_FOUND -> HttpStatus.NOT_FOUND;
      case INVALID -> HttpStatus.BAD_REQUEST;
      case CONFLICT -> HttpStatus.CONFLICT;
    };
  }

  private static String sentence(HttpResponseException e, Context ctx) {
    return switch (HttpStatus.forStatus(e.getStatus())) {
      case NOT_FOUND -> Speech.TRADE.say("refused.nothing_at", ctx.path());
      case METHOD_NOT_ALLOWED -> Speech.TRADE.say("refused.method", ctx.method(), ctx.path());
      default -> e.getMessage();
    };
  }
}
