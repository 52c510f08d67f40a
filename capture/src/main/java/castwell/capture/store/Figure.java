package castwell.capture.store;

import castwell.analysis.wording.Phrase;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The figures that a passage's ticks give under one calibration, in SI units. A figure that can't
 * be had is empty.
 *
 * @param hz the board's tick rate that was used, with its relative standard uncertainty
 * @param airDensity in kg/m3, for the drag on the way to the gates
 * @param clean whether the rules let it count
 * @param verdict "clean" or the code of the most telling reason
 * @param reason every reason, a line each, as phrases are written; empty when clean
 */
public record Figure(
    long passageId,
    long calibrationId,
    int rulesVersion,
    double hz,
    double hzRelativeU,
    double airDensity,
    OptionalDouble speedMps,
    OptionalDouble speedUOwnMps,
    OptionalDouble speedUCommonMps,
    OptionalDouble frontMps,
    OptionalDouble frontUMps,
    OptionalDouble tailMps,
    OptionalDouble tailUMps,
    OptionalDouble lengthM,
    OptionalDouble lengthUM,
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
        Double.NaN,
        Double.NaN,
        Double.NaN,
        speedMps,
        OptionalDouble.of(uOwnMps),
        OptionalDouble.of(uCommonMps),
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        speedMps.isPresent(),
        "by-hand",
        "");
  }

  public Figure ofPassage(long id) {
    return new Figure(
        id,
        calibrationId,
        rulesVersion,
        hz,
        hzRelativeU,
        airDensity,
        speedMps,
        speedUOwnMps,
        speedUCommonMps,
        frontMps,
        frontUMps,
        tailMps,
        tailUMps,
        lengthM,
        lengthUM,
        clean,
        verdict,
        reason);
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
