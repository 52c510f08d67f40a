package castwell.capture.store;

import castwell.analysis.speed.TickRate;
import castwell.analysis.wording.Phrase;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The figures that a passage's ticks give under one calibration, in SI units. A figure that can't
 * be had is empty.
 *
 * @param conditions under what they were derived
 * @param margin how much likelier its arrow is than the next best story, as a natural logarithm;
 *     empty without an arrow
 * @param strays what the gates saw beside the arrow
 * @param clean whether the rules let it count
 * @param verdict "clean" or the code of the most telling reason
 * @param reason every reason, a line each, as phrases are written; empty when clean
 */
public record Figure(
    long passageId,
    long calibrationId,
    int rulesVersion,
    Conditions conditions,
    OptionalDouble speedMps,
    OptionalDouble speedUOwnMps,
    OptionalDouble speedUCommonMps,
    OptionalDouble frontMps,
    OptionalDouble frontUMps,
    OptionalDouble tailMps,
    OptionalDouble tailUMps,
    OptionalDouble lengthM,
    OptionalDouble lengthUM,
    OptionalDouble margin,
    Conditions.Strays strays,
    boolean clean,
    String verdict,
    String reason) {
  private static final String RULES = "verdict.";

  private static final OptionalDouble NONE = OptionalDouble.empty();

  /**
   * The figure of a speed that was read off another display: nothing was derived, so nothing about
   * our gates is in it.
   */
  static Figure read(long passageId, OptionalDouble speedMps, double uOwnMps, double uCommonMps) {
    return new Figure(
        passageId,
        0,
        0,
        Conditions.NONE,
        speedMps,
        OptionalDouble.of(uOwnMps),
        OptionalDouble.of(uCommonMps),
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        Conditions.Strays.NONE,
        speedMps.isPresent(),
        "by-hand",
        "");
  }

  public Figure ofPassage(long id) {
    return new Figure(
        id,
        calibrationId,
        rulesVersion,
        conditions,
        speedMps,
        speedUOwnMps,
        speedUCommonMps,
        frontMps,
        frontUMps,
        tailMps,
        tailUMps,
        lengthM,
        lengthUM,
        margin,
        strays,
        clean,
        verdict,
        reason);
  }

  /** The figure as it follows from the tick rate that is known now, its edges read as before. */
  public Figure at(TickRate rate) {
    return new Figure(
        passageId,
        calibrationId,
        rulesVersion,
        conditions.at(rate),
        following(speedMps, rate),
        following(speedUOwnMps, rate),
        uncertaintyAt(rate, speedMps, speedUCommonMps),
        following(frontMps, rate),
        uncertaintyAt(rate, frontMps, frontUMps),
        following(tailMps, rate),
        uncertaintyAt(rate, tailMps, tailUMps),
        lengthM,
        lengthUM,
        margin,
        strays,
        clean,
        verdict,
        reason);
  }

  private OptionalDouble following(OptionalDouble value, TickRate rate) {
    return value.isEmpty()
        ? value
        : OptionalDouble.of(value.getAsDouble() * (rate.hz() / conditions.hz()));
  }

  private OptionalDouble uncertaintyAt(TickRate rate, OptionalDouble speed, OptionalDouble u) {
    if (speed.isEmpty()) {
      return u;
    }
    double mps = speed.getAsDouble();
    double before = conditions.hzRelativeU();
    double more = mps * mps * (rate.relativeU() * rate.relativeU() - before * before);
    double was = u.getAsDouble();
    return OptionalDouble.of(rate.hz() / conditions.hz() * Math.sqrt(was * was + more));
  }

  public static String written(List<Phrase> reasons) {
    return reasons.stream().map(Phrase::written).collect(Collectors.joining("\n"));
  }

  /**
   * Why the shot doesn't count. Reasons that an earlier program kept are whole sentences already.
   */
  public List<Phrase> reasons() {
    return reason
        .lines()
        .map(line -> line.startsWith(RULES) ? Phrase.read(line) : Phrase.of("as_is", line))
        .toList();
  }
}
