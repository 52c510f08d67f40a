package castwell.capture.rehearsal;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;

/** A pretended archer, who shoots arrow after arrow with what is tagged, in ends of five or six. */
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
    this.leftInEnd = pickArrowsInEnd();
  }

  /** When the next arrow comes to the gates. */
  double nextMicros() {
    return nextMicros;
  }

  /** Shoots one arrow with what is tagged now, and returns all that happens until the next one. */
  List<Happening> shoot() {
    FlyingObject arrow = pickArrow();
    Mishap mishap = pickMishap();
    leftInEnd--;
    double seconds = settings.secondsBetweenArrows();
    if (leftInEnd == 0) {
      leftInEnd = pickArrowsInEnd();
      seconds = settings.secondsToFetch();
    }
    double waitMicros = seconds * 1e6 * Math.max(0.5, 1 + 0.15 * random.nextGaussian());
    nextMicros += waitMicros;
    return mishap.with(arrow, arrow.frontMicros() + 0.4 * waitMicros, random);
  }

  private FlyingObject pickArrow() {
    Optional<RehearsalTags> now = tags.get();
    RehearsalBow bow = RehearsalRack.bow(now.map(RehearsalTags::bow).orElse(""));
    RehearsalArrow arrow = RehearsalRack.arrow(now.map(RehearsalTags::arrow).orElse(""));
    double spread = 1 + settings.speedSpread() * random.nextGaussian();
    return new FlyingObject(nextMicros, bow.speedMps(arrow) * spread, arrow.lengthM());
  }

  private Mishap pickMishap() {
    Mishap[] all = Mishap.values();
    Mishap any = all[1 + random.nextInt(all.length - 1)];
    return random.nextDouble() < settings.mishapShare() ? any : Mishap.NONE;
  }

  private int pickArrowsInEnd() {
    return 5 + random.nextInt(2);
  }
}
