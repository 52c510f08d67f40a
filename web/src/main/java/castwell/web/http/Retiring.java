package castwell.web.http;

import io.javalin.http.Context;
import java.util.Map;
import java.util.function.BiConsumer;

/** A thing of the rack taken out of use, or taken up again: {"retired": true}. */
final class Retiring {
  private Retiring() {}

  static void say(Context ctx, BiConsumer<String, Boolean> say) {
    String name = ctx.pathParam("name");
    boolean retired =
        Body.of(ctx, "retired")
            .truth("retired")
            .orElseThrow(() -> Body.invalid("The field \"retired\" is true or false."));
    say.accept(name, retired);
    ctx.json(Map.of("name", name, "retired", retired));
  }
}
