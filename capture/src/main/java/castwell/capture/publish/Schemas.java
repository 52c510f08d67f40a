package castwell.capture.publish;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** JSON Schema (2020-12) of each payload, named as its topic. */
public final class Schemas {
  public static final List<String> NAMES =
      List.of("shot", "refresh", "status", "tags", "tags-set", "tags-refused", "health", "plan");

  private Schemas() {}

  public static String text(String name) {
    try (InputStream in = Schemas.class.getResourceAsStream(name + ".schema.json")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
