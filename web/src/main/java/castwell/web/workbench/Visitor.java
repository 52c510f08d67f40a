package castwell.web.workbench;

import castwell.web.text.Speech;
import castwell.web.text.Texts;
import castwell.web.unit.UnitSystem;
import io.javalin.http.Context;
import java.util.Optional;

/** How whoever asks wants to be spoken to: their browser keeps it. */
final class Visitor {
  private static final String UNITS = "castwell-units";

  private Visitor() {}

  static Speech speech(Context ctx, Texts texts) {
    UnitSystem units =
        Optional.ofNullable(ctx.cookie(UNITS)).flatMap(UnitSystem::of).orElse(UnitSystem.TRADE);
    return new Speech(texts, units);
  }
}
