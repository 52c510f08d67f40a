package castwell.web.http.api;

import io.javalin.http.Context;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/** What the API does alike with every thing of the rack, which goes by its name. */
final class NamedThings {
  private NamedThings() {}

  /** The body of a new one: its name, and of these fields what is known. */
  static Body fresh(Context ctx, String... fields) {
    return Body.of(ctx, Stream.concat(Stream.of("name"), Stream.of(fields)).toArray(String[]::new));
  }

  static void created(Context ctx, String name) {
    ctx.status(201);
    ctx.json(Map.of("name", name));
  }

  /** Taken out of use, or taken up again: {"retired": true}. */
  static void retire(Context ctx, BiConsumer<String, Boolean> say) {
    String name = ctx.pathParam("name");
    boolean retired =
        Body.of(ctx, "retired")
            .truth("retired")
            .orElseThrow(() -> Body.invalid("refused.field_retired"));
    say.accept(name, retired);
    ctx.json(Map.of("name", name, "retired", retired));
  }
}
