package castwell.web.http.route;

import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.view.Request;
import castwell.capture.view.request.RequestReader;
import castwell.web.text.Speech;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;

/** What is sent with a request: not too large, and of the shape that is asked for. */
public final class Body {
  /** How many bytes one may have where nothing else is said. */
  public static final int LARGEST = 64 * 1024;

  private static final long MOST_PASSED_OVER = 16 * 1024 * 1024;

  private Body() {}

  /**
   * @param largest how many bytes it may have
   */
  static <Q extends Record & Request> Q of(Context ctx, int largest, Class<Q> request) {
    return RequestReader.read(bytes(ctx, largest), request);
  }

  /** Whether or not the request says beforehand how much it sends. */
  private static byte[] bytes(Context ctx, int largest) {
    try {
      InputStream body = ctx.req().getInputStream();
      boolean isTooLarge = ctx.req().getContentLengthLong() > largest;
      byte[] bytes = isTooLarge ? new byte[0] : body.readNBytes(largest + 1);
      if (isTooLarge || bytes.length > largest) {
        passOver(ctx, body);
        throw tooLarge(largest);
      }
      return bytes;
    } catch (IOException e) {
      throw invalid("refused.body_unread");
    }
  }

  /**
   * A connection that is closed while more is on its way is reset, and the answer lost with it; but
   * nobody is listened to for ever.
   */
  private static void passOver(Context ctx, InputStream body) throws IOException {
    if (ctx.req().getContentLengthLong() > MOST_PASSED_OVER) {
      ctx.header("Connection", "close");
      return;
    }
    byte[] some = new byte[16 * 1024];
    long left = MOST_PASSED_OVER;
    int read = 0;
    while (left > 0 && read >= 0) {
      read = body.read(some);
      left -= read;
    }
  }

  private static ContentTooLargeResponse tooLarge(int largest) {
    return new ContentTooLargeResponse(Speech.TRADE.say("refused.body_too_large", largest));
  }

  public static Refused invalid(String key, Object... values) {
    return Refused.of(Why.INVALID, key, values);
  }
}
