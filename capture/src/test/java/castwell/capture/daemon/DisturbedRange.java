package castwell.capture.daemon;

import castwell.capture.daemon.BoardOnPaper.Nature;
import castwell.capture.daemon.PaperWire.Fate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleConsumer;

/** A recording of an invented afternoon with known truth: all that can go wrong, in any order. */
final class DisturbedRange {
  private static final double WRAP = 0x1p32;

  private final Random random;
  private final String name;
  private final String device;
  private final BoardOnPaper board;
  private final Happenings happenings;
  private boolean crystal;
  private double wrapSeconds = Double.POSITIVE_INFINITY;

  private DisturbedRange(long seed, Optional<String> sharedName) {
    random = new Random(seed * 0x9E3779B97F4A7C15L); // neighbours would begin alike
    name = "disturbed-" + seed;
    // A device's name has 16 characters at most.
    device = sharedName.orElse("p-" + Long.toUnsignedString(seed, 36));
    board = new BoardOnPaper(nature(sharedName.isPresent()), random);
    happenings = new Happenings(board, random);
  }

  static DisturbedRange of(long seed) {
    return played(new DisturbedRange(seed, Optional.empty()));
  }

  /** Its board bears the name that others of its make bear too, and was just switched on. */
  static DisturbedRange of(long seed, String sharedName) {
    return played(new DisturbedRange(seed, Optional.of(sharedName)));
  }

  private static DisturbedRange played(DisturbedRange range) {
    range.play();
    return range;
  }

  private Nature nature(boolean shared) {
    crystal = random.nextInt(3) > 0;
    double hz = 2e6 * (1 + (crystal ? between(-10e-6, 10e-6) : between(-4000e-6, 4000e-6)));
    long firstTicks = (long) between(0, 2e9);
    if (random.nextInt(4) == 0) {
      wrapSeconds = between(5, 90);
      firstTicks = (long) (WRAP * (1 + random.nextInt(3)) - wrapSeconds * hz);
    }
    boolean odd = random.nextInt(3) == 0 && !shared;
    return new Nature(
        device,
        hz,
        firstTicks,
        random.nextInt(10) == 0 ? 65535 : 1 + random.nextInt(!shared ? 50 : 3),
        random.nextInt(3) == 0 ? 65530 - random.nextInt(100) : random.nextInt(65536),
        random.nextInt(3) == 0 && !shared ? 1 + random.nextInt(3000) : 0,
        odd ? random.nextInt(100_000) - 50_000 : 0,
        odd ? random.nextInt(100_000) - 50_000 : 0,
        new double[] {1e-3, 4e-3, 16e-3}[random.nextInt(3)]);
  }

  /** A few kinds of trouble again and again find more than all of them once. */
  private List<DoubleConsumer> someOf(List<DoubleConsumer> all) {
    List<DoubleConsumer> some = new ArrayList<>(all);
    Collections.shuffle(some, random);
    return some.subList(0, 2 + random.nextInt(all.size() - 1));
  }

  private void play() {
    List<DoubleConsumer> some = someOf(happenings.all());
    boolean firstBeatLost = random.nextInt(4) == 0;
    if (firstBeatLost) {
      board.spoilNextBeat(random.nextBoolean() ? Fate.LOST : Fate.CORRUPTED);
    }
    if (random.nextInt(6) == 0) {
      board.spoilNextIdentity(random.nextBoolean() ? Fate.LOST : Fate.CORRUPTED);
    }
    double now = 0.05;
    if (random.nextInt(4) == 0) {
      happenings.clean(now, "before the first heartbeat");
    }
    now = between(2.5, 5);
    for (int i = 8 + random.nextInt(16); i > 0; i--) {
      if (now < wrapSeconds && wrapSeconds < now + 20) {
        now = wrapSeconds - between(0, 0.02);
        happenings.clean(now, "across the wrap of the counter");
        now += between(1.5, 15);
      }
      some.get(random.nextInt(some.size())).accept(now);
      now += 2.5 + between(0, random.nextBoolean() ? 1 : 20);
    }
    now += between(2, 30);
    board.liveUntil(now);
    while (!board.named()) {
      board.liveUntil(++now);
    }
  }

  private double between(double least, double most) {
    return least + (most - least) * random.nextDouble();
  }

  /** Whether a host that can't measure its rate will read it right all the same. */
  boolean isCrystal() {
    return crystal;
  }

  String name() {
    return name;
  }

  String device() {
    return device;
  }

  List<Truth> truths() {
    return happenings.truths();
  }

  /**
   * By how much of itself a speed may be off: 0.01 % wherever the heartbeats tell the rate to 0.003
   * %. The other 0.007 % are one tick of the 16000 that the fastest arrow takes from gate to gate.
   */
  double speedTolerance() {
    return Math.max(1e-4, 7e-5 + Math.min(board.rateUncertainty(), 0.005));
  }

  Path writeTo(Path folder) throws IOException {
    String header =
        """
        # recording: 1
        # name: %s
        # started: 2026-05-02T09:14:07.120Z
        # gate-spacing-mm: 609.6
        # gate-spacing-u-mm: 0.29
        # gates-from-bow-m: 2.0
        """
            .formatted(name);
    return Files.writeString(folder.resolve(name + ".rec"), header + board.wireAt(0).text());
  }
}
