package castwell.analysis.gates;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the shots of a session say together of front over tail. A single shot's residual is its four
 * triggers' scatter; their mean is 0 unless something is the matter: tails slowed by a butt that
 * stands too near, or one gate that sees more of an arrow than the other.
 *
 * @param n the number of shots
 * @param meanM their mean residual in metres, below 0 where the tails came late
 * @param uM the mean's standard uncertainty
 * @param scatterM the residual's standard deviation: twice the trigger scatter, of which each of
 *     four edges has one
 */
public record FrontOverTail(int n, double meanM, double uM, double scatterM) {
  /** The fewest shots that are said something of (assumed). */
  public static final int ENOUGH = 10;

  /** How many shots the trigger scatter that was believed before is worth (tried by simulation). */
  static final double BELIEVED_SHOTS = 8;

  private static final double EDGES_TO_ONE = 2;
  private static final double SURE = 3;

  /** What is less than this of the spacing isn't worth a sentence: half of it reaches the speed. */
  static final double WORTH = 0.001;

  /**
   * @param believedTriggerM the trigger scatter of the calibration, above 0
   * @return empty without shots
   */
  public static Optional<FrontOverTail> of(List<GateShot> shots, double believedTriggerM) {
    return ofResiduals(shots.stream().mapToDouble(GateShot::residualM).toArray(), believedTriggerM);
  }

  /** The same from residuals alone, in metres. */
  public static Optional<FrontOverTail> ofResiduals(double[] residualsM, double believedTriggerM) {
    if (residualsM.length == 0) {
      return Optional.empty();
    }
    TrimmedMean mean = TrimmedMean.of(residualsM, EDGES_TO_ONE * believedTriggerM, BELIEVED_SHOTS);
    return Optional.of(
        new FrontOverTail(mean.n(), mean.mean(), mean.standardError(), mean.standardDeviation()));
  }

  /** The residual of a shot, in metres, or as far out as one that isn't spoilt may lie. */
  double pulledIn(double residualM) {
    double reach = SURE * scatterM;
    return Math.max(meanM - reach, Math.min(meanM + reach, residualM));
  }

  /** The standard uncertainty of the trigger scatter, in metres: s over root 2 (8 + n - 1). */
  public double triggerUM() {
    return scatterM / EDGES_TO_ONE / Math.sqrt(2 * (BELIEVED_SHOTS + n - 1));
  }

  public boolean isEnough() {
    return n >= ENOUGH;
  }

  /** The trigger scatter in metres that the session shows; empty of too few shots. */
  public OptionalDouble triggerM() {
    return isEnough() ? OptionalDouble.of(scatterM / EDGES_TO_ONE) : OptionalDouble.empty();
  }

  /** Whether the residuals lie off 0 by more than chance and by enough to matter. */
  public boolean named(double spacingM) {
    return isEnough() && Math.abs(meanM) > SURE * uM && Math.abs(meanM) > WORTH * spacingM;
  }

  /**
   * What the plain mean of front and tail reads more than the fronts alone, as a share of the
   * speed: if the tails were slowed, that is its error; if the gates see unlike lengths, it is the
   * fronts' error with the opposite sign.
   */
  public double relativeEffect(double spacingM) {
    return meanM / (2 * spacingM);
  }

  /**
   * The standard uncertainty that all speeds of the session share, as a share of them, as long as
   * nobody knows which of both causes it is: anything between them is as likely.
   */
  public double relativeU(double spacingM) {
    return Math.abs(relativeEffect(spacingM)) / Math.sqrt(3);
  }
}
