package castwell.capture.rehearsal;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;

/** Shoots arrow after arrow with whatever is tagged, in ends of five or six. */
final class PretendArcher {
  private final RehearsalSettings settings;
  private final Supplier<Optional<RehearsalTags>> tags;
  private final Random random;
  private double nextMicros;
  private int leftInEnd;

  PretendArcher(
      RehearsalSettings settings, Supplier<Optional<RehearsalTags>> tags, double startMicros) {
    this.settings = settings;
    this.tags = tags;
    this.random = new Random(settings.seed());
    this.nextMicros = startMicros + 1e6 * settings.secondsBetweenArrows();
    this.leftInEnd = arrowsInEnd();
  }

  /** When the next arrow comes to the gates. */
  double nextMicros() {
    return nextMicros;
  }

  /** One arrow, of what is tagged now, and what happens until the next. */
  List<Happening> shoot() {
    FlyingObject arrow = arrow();
    Mishap mishap = mishap();
    leftInEnd--;
    double seconds = settings.secondsBetweenArrows();
    if (leftInEnd == 0) {
      leftInEnd = arrowsInEnd();
      seconds = settings.secondsToFetch();
    }
    double waitMicros = seconds * 1e6 * Math.max(0.5, 1 + 0.15 * random.nextGaussian());
    nextMicros += waitMicros;
    return mishap.with(arrow, arrow.frontMicros() + 0.4 * waitMicros, random);
  }

  private FlyingObject arrow() {
    Optional<RehearsalTags> now = tags.get();
    RehearsalBow bow = RehearsalRack.bow(now.map(RehearsalTags::bow).orElse(""));
    RehearsalArrow arrow = RehearsalRack.arrow(now.map(RehearsalTags::arrow).orElse(""));
    double spread = 1 + settings.speedSpread() * random.nextGaussian();
    return new FlyingObject(nextMicros, bow.speedMps(arrow) * spread, arrow.lengthM());
  }

  private Mishap mishap() {
    Mishap[] all = Mishap.values();
    Mishap any = all[1 + random.nextInt(all.length - 1)];
    return random.nextDouble() < settings.mishapShare() ? any : Mishap.NONE;
  }

  private int arrowsInEnd() {
    return 5 + random.nextInt(2);
  }
}
