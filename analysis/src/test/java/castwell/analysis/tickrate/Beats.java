package castwell.analysis.tickrate;

import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/** Heartbeats as the wire brings them: about every second, dithered by 0 to 16 ms, never early. */
final class Beats {
  private final double hz;
  private final ToDoubleFunction<SplittableRandom> delaySeconds;
  private final SplittableRandom random;
  private double nowSeconds;

  Beats(double hz, ToDoubleFunction<SplittableRandom> delaySeconds, SplittableRandom random) {
    this.hz = hz;
    this.delaySeconds = delaySeconds;
    this.random = random;
    this.nowSeconds = 1000 * random.nextDouble();
  }

  static ToDoubleFunction<SplittableRandom> uniform(double mostSeconds) {
    return random -> mostSeconds * random.nextDouble();
  }

  static ToDoubleFunction<SplittableRandom> exponential(double meanSeconds) {
    return random -> -meanSeconds * Math.log(1 - random.nextDouble());
  }

  static ToDoubleFunction<SplittableRandom> stalling(
      double mostSeconds, double share, double stallSeconds) {
    return random ->
        mostSeconds * random.nextDouble() + (random.nextDouble() < share ? stallSeconds : 0);
  }

  BeatSegment segment(int beats) {
    BeatSegment segment = new BeatSegment();
    addTo(segment, beats);
    return segment;
  }

  void addTo(BeatSegment segment, int beats) {
    for (int i = 0; i < beats; i++) {
      nowSeconds += 1 + 0.016 * random.nextDouble();
      segment.add((long) (nowSeconds * hz), nowSeconds + delaySeconds.applyAsDouble(random));
    }
  }

  /** The true time of the last beat. */
  double nowSeconds() {
    return nowSeconds;
  }
}
