package castwell.web.http.live;

import castwell.capture.store.Store;
import castwell.web.access.Origin;
import castwell.web.http.guard.Refusals;
import castwell.web.http.guard.Refusals.Kind;
import castwell.web.http.guard.Seats;
import castwell.web.http.problem.Problems;
import castwell.web.http.route.Body;
import castwell.web.http.route.Route;
import castwell.web.settings.HttpSettings.HttpLimits;
import castwell.web.text.Speech;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import jakarta.servlet.AsyncContext;
import jakarta.servlet.AsyncEvent;
import jakarta.servlet.AsyncListener;
import jakarta.servlet.ServletOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/**
 * <code>/api/live</code>: resumed by the browser's own Last-Event-ID, or by <code>?after=</code>;
 * with <code>?light=1</code> each heartbeat's light levels come too.
 */
public final class LiveApi {
  private static final String RETRY_SECONDS = "20";

  private final Store store;
  private final LiveFeed feed;
  private final Seats seats;
  private final Refusals refusals;

  public LiveApi(Store store, LiveFeed feed, HttpLimits limits, Refusals refusals) {
    this.seats = new Seats(limits.readers(), limits.readersPerAddress());
    this.refusals = refusals;
    this.store = store;
    this.feed = feed;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/api/live", "What happens, as it happens (server-sent events)")
            .text("after", "the last event that is known; what comes from now on otherwise")
            .text("light", "1 for each heartbeat's light levels too")
            .says(this::stream, "text/event-stream"));
  }

  private void stream(Context ctx) throws IOException {
    ServletOutputStream out = ctx.res().getOutputStream();
    long place = place(ctx);
    boolean light = "1".equals(ctx.queryParam("light"));
    String address = Origin.neighbourhood(ctx.ip());
    switch (seats.take(address)) {
      case TAKEN ->
          ctx.future(() -> serve(ctx, feed.reader(out, place, light, () -> seats.leave(address))));
      case ALL_TAKEN -> refuse(ctx, HttpStatus.SERVICE_UNAVAILABLE, "refused.live_taken");
      case TOO_MANY_OF_ONE ->
          refuse(ctx, HttpStatus.TOO_MANY_REQUESTS, "refused.live_taken_by_address");
    }
  }

  private void refuse(Context ctx, HttpStatus status, String key) {
    refusals.count(Kind.TOO_MANY_READERS);
    ctx.header("Retry-After", RETRY_SECONDS);
    Problems.answer(ctx, status, Speech.TRADE.say(key));
  }

  /** Javalin has made the request asynchronous by now, and ends it when the future is done. */
  private CompletableFuture<?> serve(Context ctx, LiveReader reader) {
    AsyncContext async = ctx.req().getAsyncContext();
    async.setTimeout(0);
    ctx.res().setContentType("text/event-stream");
    ctx.res().setCharacterEncoding("UTF-8");
    ctx.res().setHeader("Cache-Control", "no-store");
    ctx.res().setHeader("X-Accel-Buffering", "no");
    try {
      async.addListener(new Ending(reader));
      ctx.res().flushBuffer();
      feed.join(reader);
    } catch (IOException | IllegalStateException e) {
      reader.close(); // gone before it began
    }
    return reader.finished();
  }

  /** However the server learns that the other side is gone, the reader does too. */
  private record Ending(LiveReader reader) implements AsyncListener {
    @Override
    public void onComplete(AsyncEvent event) {
      reader.leave();
    }

    @Override
    public void onError(AsyncEvent event) {
      reader.close();
    }

    @Override
    public void onTimeout(AsyncEvent event) {
      reader.close();
    }

    @Override
    public void onStartAsync(AsyncEvent event) {
      // it has begun already
    }
  }

  private long place(Context ctx) {
    String resumed = ctx.header("Last-Event-ID");
    String asked = resumed != null ? resumed : ctx.queryParam("after");
    long last = store.read(t -> t.feed().last());
    if (asked == null) {
      return last;
    }
    if (!asked.matches("\\d{1,18}")) {
      throw Body.invalid("refused.event_id");
    }
    // Whoever knows more than there is read another data folder's feed at this address.
    return Math.min(Long.parseLong(asked), last);
  }
}
