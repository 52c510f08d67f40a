package castwell.analysis.reading;

import java.util.Optional;

/** What is believed of an arrow before its edges are read, with its consequences. */
final class Prior {
  final double spacingM;

  /** The variance of the place on the arrow at which one gate triggers, in square metres. */
  final double triggerVariance;

  /** What a tail's interval is to be multiplied with, so that it agrees with the front's. */
  final double tailFactor;

  private final Limits limits;
  private final Density speed;
  private final Density length;
  private final double shortestIntervalS;
  private final double longestIntervalS;

  Prior(Knowledge knowledge) {
    limits = knowledge.limits();
    spacingM = knowledge.calibration().spacingM();
    double trigger = knowledge.calibration().triggerScatterM();
    triggerVariance = trigger * trigger;
    tailFactor = 1 + knowledge.residualM() / spacingM;
    speed =
        density(
            limits.slowestMps(),
            limits.fastestMps(),
            Assumed.USUAL_SPEED,
            knowledge
                .cellSpeedMps()
                .map(v -> new Known(v.value(), Math.max(v.u(), Assumed.LEAST_CELL_U * v.value()))),
            Assumed.CELL_TRUSTED);
    length =
        density(
            limits.shortestM(),
            limits.longestM(),
            Assumed.USUAL_LENGTH,
            knowledge
                .taggedLengthM()
                .map(l -> new Known(l.value(), Math.hypot(l.u(), Assumed.TAG_U_M))),
            Assumed.TAG_TRUSTED);
    shortestIntervalS = spacingM / limits.fastestMps() * Assumed.INTERVAL_BELOW;
    longestIntervalS = spacingM / limits.slowestMps() * Assumed.INTERVAL_ABOVE;
  }

  /** A normal distribution of what is expected, mixed with a uniform one between the limits. */
  private record Density(double least, double most, Known expected, double share) {
    private static final double ROOT = Math.sqrt(2 * Math.PI);

    double at(double x) {
      if (!(x >= least && x <= most)) {
        return 0;
      }
      double z = (x - expected.value()) / expected.u();
      return share * Math.exp(-z * z / 2) / (expected.u() * ROOT) + (1 - share) / (most - least);
    }
  }

  private static Density density(
      double least, double most, Known usual, Optional<Known> known, double trusted) {
    return new Density(
        least, most, known.orElse(usual), known.isPresent() ? trusted : Assumed.USUAL);
  }

  double speed(double mps) {
    return speed.at(mps);
  }

  double length(double metres) {
    return length.at(metres);
  }

  /** Whether the limits allow an arrow of this speed and length. */
  boolean allows(double mps, double metres) {
    return mps >= limits.slowestMps()
        && mps <= limits.fastestMps()
        && metres >= limits.shortestM()
        && metres <= limits.longestM();
  }

  /** Whether an arrow, one of its edges perhaps spoilt, takes so long from gate A to gate B. */
  boolean canCross(double seconds) {
    return seconds >= shortestIntervalS && seconds <= longestIntervalS;
  }

  /** Whether an arrow, one of its edges perhaps spoilt, blocks a gate for so long. */
  boolean canBlock(double seconds) {
    return seconds >= (limits.shortestM() - Assumed.MOST_SPOILT_M) / limits.fastestMps()
        && seconds <= (limits.longestM() + Assumed.MOST_SPOILT_M) / limits.slowestMps();
  }

  /** The stretch before an arrow's tail that flutters, in metres. */
  double flutterM() {
    return limits.flutterM();
  }
}
