package castwell.web.http.guard;

import castwell.web.access.Attempts;
import castwell.web.access.Doorkeeper;
import castwell.web.access.Origin;
import castwell.web.http.guard.Refusals.Kind;
import castwell.web.http.problem.Problems;
import castwell.web.text.Speech;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Who may do what. Served to this computer alone, the page takes no key, but only what its own
 * computer asks of it by its own name. Served wider, it takes the key of everyone and everywhere: a
 * proxy may make all requests look as if they came from here.
 */
public final class Gatekeeper {
  private static final Set<String> READING = Set.of("GET", "HEAD");

  /** The page's own files, which say nothing of anybody's shots, and the way in. */
  private static final Pattern OPEN_TO_ALL =
      Pattern.compile("/|/enter|/api/admission|/(lib/)?[a-z0-9.-]+\\.(html|js|css|svg)");

  private static final String BEARER = "Bearer ";

  private final boolean needsKey;
  private final boolean watchOpen;
  private final Doorkeeper door;
  private final Attempts attempts;
  private final Refusals refusals;

  public Gatekeeper(
      boolean needsKey, boolean watchOpen, Doorkeeper door, Attempts attempts, Refusals refusals) {
    this.needsKey = needsKey;
    this.watchOpen = watchOpen;
    this.door = door;
    this.attempts = attempts;
    this.refusals = refusals;
  }

  public void route(JavalinConfig config) {
    config.routes.before(this::letPass);
    config.routes.after(this::countTooLarge);
  }

  private void countTooLarge(Context ctx) {
    if (ctx.status() == HttpStatus.CONTENT_TOO_LARGE) {
      refusals.count(Kind.TOO_LARGE);
    }
  }

  private void letPass(Context ctx) {
    boolean reading = READING.contains(ctx.method().name());
    if (!needsKey && !isAskedByItsOwnName(ctx)) {
      refuse(
          ctx,
          Kind.OTHER_HOST,
          HttpStatus.MISDIRECTED_REQUEST,
          Speech.TRADE.say("refused.other_host"));
    } else if (!reading && isFromAnotherSite(ctx)) {
      refuse(ctx, Kind.OTHER_SITE, HttpStatus.FORBIDDEN, Speech.TRADE.say("refused.other_site"));
    } else if (!reading && !isJson(ctx)) {
      Problems.answer(
          ctx, HttpStatus.UNSUPPORTED_MEDIA_TYPE, Speech.TRADE.say("refused.send_json"));
      ctx.skipRemainingHandlers();
    } else if (needsKey && !OPEN_TO_ALL.matcher(ctx.path()).matches()) {
      askForKey(ctx, reading);
    }
  }

  private void askForKey(Context ctx, boolean reading) {
    Optional<String> key = bearer(ctx);
    if (key.isPresent()) {
      tryKey(ctx, key.get());
    } else if (!(reading && watchOpen) && !isIn(ctx)) {
      if (reading && isForPeople(ctx)) {
        refusals.count(Kind.NO_KEY);
        ctx.redirect("/enter", HttpStatus.SEE_OTHER);
        ctx.skipRemainingHandlers();
        return;
      }
      ctx.header("WWW-Authenticate", "Bearer realm=\"castwell\"");
      refuse(ctx, Kind.NO_KEY, HttpStatus.UNAUTHORIZED, Speech.TRADE.say("refused.needs_key"));
    }
  }

  /** Whether the key is right; the refusal is answered already if it isn't. */
  public boolean tryKey(Context ctx, String key) {
    Attempts.Outcome outcome =
        attempts.attempt(Origin.neighbourhood(ctx.ip()), () -> door.opens(key));
    if (outcome instanceof Attempts.Wait wait) {
      Duration time = wait.time();
      ctx.header("Retry-After", String.valueOf(time.plusMillis(999).toSeconds()));
      refuse(
          ctx,
          Kind.TOO_MANY_TRIES,
          HttpStatus.TOO_MANY_REQUESTS,
          Speech.TRADE.say("refused.wrong_keys", time.plusMillis(999).toSeconds()));
    } else if (outcome instanceof Attempts.Wrong) {
      ctx.header("WWW-Authenticate", "Bearer realm=\"castwell\", error=\"invalid_token\"");
      refuse(ctx, Kind.WRONG_KEY, HttpStatus.UNAUTHORIZED, Speech.TRADE.say("refused.wrong_key"));
    }
    return outcome instanceof Attempts.Right;
  }

  /** Whether changes are taken from whoever asks. */
  public boolean mayChange(Context ctx) {
    return !needsKey || isIn(ctx);
  }

  public boolean mayWatch(Context ctx) {
    return watchOpen || mayChange(ctx);
  }

  private boolean isIn(Context ctx) {
    return AdmissionCookie.of(ctx).filter(door::isAdmitted).isPresent();
  }

  private static boolean isForPeople(Context ctx) {
    String accept = ctx.header("Accept");
    return accept != null && accept.startsWith("text/html") && !ctx.path().startsWith("/api/");
  }

  private static Optional<String> bearer(Context ctx) {
    return Optional.ofNullable(ctx.header("Authorization"))
        .filter(value -> value.regionMatches(true, 0, BEARER, 0, BEARER.length()))
        .map(value -> value.substring(BEARER.length()));
  }

  /** Whoever leaves the host out is no browser. */
  private static boolean isAskedByItsOwnName(Context ctx) {
    String host = ctx.header("Host");
    return host == null || Origin.isLoopbackHost(host);
  }

  /**
   * By what the browser says itself (Fetch Metadata; the Fetch standard's Origin header). Whoever
   * says neither is no browser, and has no cookies of anybody's to misuse.
   */
  private static boolean isFromAnotherSite(Context ctx) {
    String site = ctx.header("Sec-Fetch-Site");
    if (site != null) {
      return !site.equals("same-origin") && !site.equals("none");
    }
    String origin = ctx.header("Origin");
    String host = ctx.header("Host");
    return origin != null && (host == null || !Origin.isOf(origin, host));
  }

  /** A form on another site can't send this type. */
  private static boolean isJson(Context ctx) {
    String type = ctx.contentType();
    return type != null && type.startsWith("application/json");
  }

  private void refuse(Context ctx, Kind kind, HttpStatus status, String sentence) {
    refusals.count(kind);
    Problems.answer(ctx, status, sentence);
    ctx.skipRemainingHandlers();
  }
}
