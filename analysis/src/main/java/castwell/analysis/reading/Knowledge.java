package castwell.analysis.reading;

import castwell.analysis.speed.Calibration;
import java.util.Optional;

/**
 * All that is known before the edges are read.
 *
 * @param calibration how the gates stand, with the trigger scatter that the session told
 * @param limits what can be an arrow
 * @param residualM by how much the session's tails come late against its fronts, in metres of
 *     flight, negative when early is what they are; 0 where none was found
 * @param taggedLengthM the length of the arrow that the tags name
 * @param cellSpeedMps the speed of the cell's earlier shots, and how far they scatter
 * @param recentA how often gate A was blocked in the second before by what was no arrow
 * @param recentB the same of gate B
 */
public record Knowledge(
    Calibration calibration,
    Limits limits,
    double residualM,
    Optional<Known> taggedLengthM,
    Optional<Known> cellSpeedMps,
    int recentA,
    int recentB) {

  /** Of the gates alone: no tag, no earlier shot, and nothing seen before. */
  public static Knowledge of(Calibration calibration, Limits limits) {
    return new Knowledge(calibration, limits, 0, Optional.empty(), Optional.empty(), 0, 0);
  }

  public Knowledge withTaggedLength(Optional<Known> metres) {
    return new Knowledge(calibration, limits, residualM, metres, cellSpeedMps, recentA, recentB);
  }

  int recent(int gate) {
    return gate == 0 ? recentA : recentB;
  }
}
