package castwell.web.http.page;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;

/**
 * What is the same for everybody while the program runs. Browsers keep it and ask each time whether
 * it still holds (RFC 9110, 8.8.3 and 13.1.2), as with the scripts.
 */
final class Unchanging {
  private static final int TAG_BYTES = 12;

  private final MediaType type;
  private final String content;
  private final String tag;

  Unchanging(MediaType type, String content) {
    this.type = type;
    this.content = content;
    tag = tag(content);
  }

  void answer(Context ctx) {
    ctx.header("Cache-Control", "max-age=0");
    ctx.header("ETag", tag);
    if (isKept(ctx.header("If-None-Match"))) {
      ctx.status(HttpStatus.NOT_MODIFIED);
    } else {
      ctx.contentType(type.header()).result(content);
    }
  }

  private boolean isKept(String tags) {
    return tags != null
        && Arrays.stream(tags.split(","))
            .map(String::strip)
            .anyMatch(kept -> kept.equals(tag) || kept.equals("*"));
  }

  /** Weak, since what goes over the wire may be compressed or not. */
  private static String tag(String content) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(content.getBytes(StandardCharsets.UTF_8));
      byte[] first = Arrays.copyOf(hash, TAG_BYTES);
      return "W/\"" + Base64.getUrlEncoder().encodeToString(first) + "\"";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
