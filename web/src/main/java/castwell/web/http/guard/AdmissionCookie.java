package castwell.web.http.guard;

import castwell.web.access.Doorkeeper;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.util.Optional;

/** What a browser that is in shows (RFC 6265bis). */
public final class AdmissionCookie {
  private AdmissionCookie() {}

  public static Optional<String> of(Context ctx) {
    return Optional.ofNullable(ctx.cookie(name(ctx)));
  }

  public static void set(Context ctx, String token) {
    ctx.cookie(cookie(ctx, token, (int) Doorkeeper.ADMITTED_FOR.toSeconds()));
  }

  public static void take(Context ctx) {
    ctx.cookie(cookie(ctx, "", 0));
  }

  private static Cookie cookie(Context ctx, String token, int maxAgeSeconds) {
    Cookie cookie = new Cookie(name(ctx), token);
    cookie.setPath("/");
    cookie.setMaxAge(maxAgeSeconds);
    cookie.setHttpOnly(true);
    cookie.setSecure(isSecure(ctx));
    cookie.setSameSite(SameSite.STRICT);
    return cookie;
  }

  /** Browsers give a host's cookies to all its ports: two Castwells on one must not mix them up. */
  private static String name(Context ctx) {
    return "castwell-" + ctx.req().getLocalPort();
  }

  /** Behind a proxy that speaks TLS it is the browser that knows. */
  private static boolean isSecure(Context ctx) {
    String origin = ctx.header("Origin");
    return ctx.req().isSecure() || (origin != null && origin.startsWith("https:"));
  }
}
