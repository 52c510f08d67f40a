package castwell.analysis.gates;

import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Calibration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * All that the shots of one session say together of one pair of gates.
 *
 * @param spacingM the spacing with which the shots' speeds were reckoned
 * @param trend empty with fewer than ten shots
 * @param overKnown for each gate; empty without shots of known length
 * @param spacing empty with fewer than ten shots of known length
 */
public record GateFindings(
    double spacingM,
    FrontOverTail frontOverTail,
    Optional<Trend> trend,
    List<LengthOverKnown> overKnown,
    Optional<SpacingFromLengths> spacing) {

  /** A trigger that is said not to scatter at all scatters by this nevertheless (assumed). */
  private static final double LEAST_TRIGGER_M = 1e-4;

  /**
   * @param shots of one session and one calibration, in any order
   * @return empty without shots
   */
  public static Optional<GateFindings> of(List<GateShot> shots, Calibration calibration) {
    double believed = Math.max(LEAST_TRIGGER_M, calibration.triggerScatterM());
    return FrontOverTail.of(shots, believed).map(both -> of(shots, calibration, believed, both));
  }

  private static GateFindings of(
      List<GateShot> shots,
      Calibration calibration,
      double believedM,
      FrontOverTail frontOverTail) {
    double trigger = frontOverTail.triggerM().orElse(believedM);
    return new GateFindings(
        calibration.spacingM(),
        frontOverTail,
        Trend.of(shots, frontOverTail),
        Stream.of(Gate.values())
            .flatMap(gate -> LengthOverKnown.of(shots, gate, trigger).stream())
            .toList(),
        SpacingFromLengths.of(shots, calibration.spacing(), trigger, SpacingFromLengths.WIDTH_M));
  }

  public boolean frontOverTailNamed() {
    return frontOverTail.named(spacingM);
  }

  public boolean trendNamed() {
    return trend.filter(found -> found.named(spacingM)).isPresent();
  }

  public boolean spacingNamed() {
    return spacing.filter(SpacingFromLengths::disagrees).isPresent();
  }

  /** Whether anything is the matter that is worth a sentence. */
  public boolean isNamed() {
    return frontOverTailNamed() || trendNamed() || spacingNamed();
  }
}
