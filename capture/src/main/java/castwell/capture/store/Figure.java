package castwell.capture.store;

import java.util.OptionalDouble;

/**
 * What a passage's ticks say under one calibration, in SI units; empty where there is no such
 * figure.
 *
 * @param hz the board's tick rate that was used, with its relative standard uncertainty
 * @param airDensity in kg/m3, for the drag on the way to the gates
 * @param clean whether the rules let it count
 * @param verdict "clean" or the code of the most telling reason
 * @param reason every reason, a sentence each; empty when clean
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
}
