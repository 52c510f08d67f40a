package castwell.web.http.guard;

import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What browsers are told not to do with what is served here. Which there are: OWASP Secure Headers
 * Project, from memory; what they mean: Content Security Policy Level 3, Fetch, HTML, Permissions
 * Policy and RFC 6797.
 */
public final class SafeHeaders {
  /** Nothing but this server's own files, nothing inline, in nobody's frame. */
  private static final String OWN_FILES_ONLY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
          + " base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

  /** A page at the range may keep the screen on; it needs nothing else of the phone. */
  private static final String SCREEN_ALONE =
      "screen-wake-lock=(self), accelerometer=(), camera=(),"
          + " display-capture=(), geolocation=(), gyroscope=(), hid=(), magnetometer=(),"
          + " microphone=(), midi=(), payment=(), serial=(), usb=()";

  private static final String ONE_YEAR = "max-age=31536000";

  private final Map<String, String> headers = new LinkedHashMap<>();

  /**
   * @param alwaysTls whether browsers shall never come without it again; not told for this computer
   *     alone, whose other servers share its name
   */
  public SafeHeaders(boolean alwaysTls) {
    headers.put("Content-Security-Policy", OWN_FILES_ONLY);
    headers.put("X-Content-Type-Options", "nosniff");
    headers.put("X-Frame-Options", "DENY");
    headers.put("Referrer-Policy", "no-referrer");
    headers.put("Cross-Origin-Opener-Policy", "same-origin");
    headers.put("Cross-Origin-Resource-Policy", "same-origin");
    headers.put("Permissions-Policy", SCREEN_ALONE);
    if (alwaysTls) {
      headers.put("Strict-Transport-Security", ONE_YEAR);
    }
  }

  public void add(Context ctx) {
    headers.forEach(ctx::header);
  }
}
