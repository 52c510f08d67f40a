package castwell.analysis.speed;

import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Ticks to speed: v = d / t, with its uncertainty by the law of propagation (JCGM 100:2008, 5.1.2).
 *
 * <p>The sources "gate spacing" and "tick rate" are common to the set-up. Each shot has sources of
 * its own for each end at each gate: "trigger" (the place on the object), and those that {@link
 * Stamps} adds. These have the same names in every passage, so they tell apart the ends of one
 * object, but not the shots of one set. An arrow's speed has one more, {@link #TRUST}.
 */
public final class SpeedMeter {
  /** Front and tail may contradict, and then it isn't sure which to trust. */
  private static final Source TRUST = Source.own("which edge to trust");

  private static final Source TRUST_LENGTH = Source.own("which edge is an end");

  private final Stamps stamps;
  private final Calibration calibration;

  private SpeedMeter(Stamps stamps, Calibration calibration) {
    this.stamps = stamps;
    this.calibration = calibration;
  }

  /**
   * Of a passage taken as one object: each gate's first "blocked" and last "clear" are its ends.
   */
  public static Measurement measure(
      Passage passage, Calibration calibration, TickRate rate, StampLatency latency) {
    return measure(Ends.of(passage), calibration, rate, latency);
  }

  /** Of an object with these ends, one or more of which may be missing. */
  public static Measurement measure(
      Ends ends, Calibration calibration, TickRate rate, StampLatency latency) {
    return new SpeedMeter(new Stamps(ends, rate, latency), calibration).measurement();
  }

  /** Of an arrow with all its ends, whose speed was told by weighing what they may be. */
  public static Measurement measure(
      Ends ends, MixedSpeed mixed, Calibration calibration, TickRate rate, StampLatency latency) {
    return new SpeedMeter(new Stamps(ends, rate, latency), calibration).measurement(mixed);
  }

  private Measurement measurement() {
    Optional<Quantity> front = between(End.FRONT);
    Optional<Quantity> tail = between(End.TAIL);
    Optional<Quantity> speed = together(front, tail);
    return new Measurement(front, tail, speed, speed.flatMap(this::length));
  }

  private Measurement measurement(MixedSpeed mixed) {
    Quantity front = between(End.FRONT).orElseThrow();
    Quantity tail = between(End.TAIL).orElseThrow();
    Quantity both = together(Optional.of(front), Optional.of(tail)).orElseThrow();
    Quantity speed =
        both.times(mixed.both()).plus(front.times(mixed.front())).plus(tail.times(mixed.tail()));
    Quantity told = moved(trusted(speed, mixed.ownU()), mixed.mps());
    return new Measurement(
        Optional.of(front),
        Optional.of(tail),
        Optional.of(told),
        length(told)
            .map(length -> moved(length, mixed.lengthM()))
            .map(length -> length.plus(Quantity.of(0, mixed.lengthUM(), TRUST_LENGTH))));
  }

  /** The same budget, the rest of the own uncertainty being which edge to trust. */
  private static Quantity trusted(Quantity speed, double ownU) {
    double told = speed.standardUncertainty(Kind.OWN);
    double rest = Math.sqrt(Math.max(0, ownU * ownU - told * told));
    return speed.plus(Quantity.of(0, rest, TRUST));
  }

  /** The same uncertainty about another value. */
  private static Quantity moved(Quantity quantity, double value) {
    return new Quantity(value, quantity.contributions());
  }

  private Optional<Quantity> between(End end) {
    return crossing(Gate.A, end)
        .flatMap(a -> crossing(Gate.B, end).flatMap(b -> speedBetween(a, b)));
  }

  private Optional<Quantity> speedBetween(Crossing a, Crossing b) {
    Quantity seconds = b.seconds().minus(a.seconds());
    if (seconds.value() == 0) {
      return Optional.empty();
    }
    Quantity metres = calibration.spacing().plus(b.beyondM()).minus(a.beyondM());
    return Optional.of(calibration.common(metres.dividedBy(seconds)));
  }

  /**
   * The mean of the speeds, weighted by the inverse of each one's own relative variance. With
   * absolute variances an end that happens to read slow would weigh more for being slow.
   */
  private static Optional<Quantity> together(Optional<Quantity> front, Optional<Quantity> tail) {
    List<Quantity> speeds =
        Stream.of(front, tail)
            .flatMap(Optional::stream)
            .filter(speed -> speed.value() > 0)
            .toList();
    double weights = speeds.stream().mapToDouble(SpeedMeter::weight).sum();
    return speeds.stream()
        .map(speed -> speed.times(weight(speed) / weights))
        .reduce(Quantity::plus);
  }

  private static double weight(Quantity speed) {
    double relative = speed.standardUncertainty(Kind.OWN) / speed.value();
    return 1 / (relative * relative);
  }

  /**
   * The speed times the time for which a gate stayed blocked, as the mean of the gates that saw
   * both ends.
   */
  private Optional<Quantity> length(Quantity speed) {
    List<Quantity> lengths =
        Stream.of(Gate.values()).flatMap(gate -> lengthAt(gate, speed).stream()).toList();
    return lengths.stream().reduce(Quantity::plus).map(sum -> sum.times(1.0 / lengths.size()));
  }

  private Optional<Quantity> lengthAt(Gate gate, Quantity speed) {
    return crossing(gate, End.FRONT)
        .flatMap(front -> crossing(gate, End.TAIL).map(tail -> length(speed, front, tail)));
  }

  private static Quantity length(Quantity speed, Crossing front, Crossing tail) {
    return speed
        .times(tail.seconds().minus(front.seconds()))
        .plus(front.beyondM())
        .minus(tail.beyondM());
  }

  private Optional<Crossing> crossing(Gate gate, End end) {
    Source trigger = Source.own("trigger" + Stamps.place(gate, end));
    return stamps
        .seconds(gate, end)
        .map(
            seconds ->
                new Crossing(seconds, Quantity.of(0, calibration.triggerScatterM(), trigger)));
  }
}
