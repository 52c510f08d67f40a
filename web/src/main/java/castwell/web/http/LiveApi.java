package castwell.web.http;

import castwell.capture.store.Store;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.concurrent.CompletableFuture;

/**
 * <code>/api/live</code>: resumed by the browser's own Last-Event-ID, or by <code>?after=</code>;
 * with <code>?light=1</code> each heartbeat's light levels come too.
 */
final class LiveApi {
  private final Store store;
  private final LiveFeed feed;

  LiveApi(Store store, LiveFeed feed) {
    this.store = store;
    this.feed = feed;
  }

  void route(JavalinConfig config) {
    config.routes.get("/api/live", this::follow);
  }

  private void follow(Context ctx) {
    long place = place(ctx);
    ctx.res().setContentType("text/event-stream");
    ctx.res().setCharacterEncoding("UTF-8");
    ctx.res().setHeader("Cache-Control", "no-store");
    ctx.res().setHeader("X-Accel-Buffering", "no");
    boolean light = "1".equals(ctx.queryParam("light"));
    ctx.future(() -> serve(ctx, place, light));
  }

  /** Javalin has made the request asynchronous by now, and ends it when the future is done. */
  private CompletableFuture<?> serve(Context ctx, long place, boolean light) {
    try {
      ctx.req().getAsyncContext().setTimeout(0);
      ctx.res().flushBuffer();
      return feed.join(ctx.res().getOutputStream(), place, light);
    } catch (IOException e) {
      return CompletableFuture.completedFuture(null); // gone before it began
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
      throw Body.invalid("An event's id is a whole number: ask after the last one you know.");
    }
    // Whoever knows more than there is read another data folder's feed at this address.
    return Math.min(Long.parseLong(asked), last);
  }
}
