package castwell.analysis.gates;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The distance between the gates as arrows of known length tell it. Blocked time times speed is a
 * length in units of the stated spacing S': seen = (known + W) S' / S, where W is how much longer
 * the gates see an arrow than a tape does, and S the true spacing. So S = S' / b by the {@link
 * LengthLine} through the arrows' means: one arrow tells S, arrows of several lengths tell W too.
 *
 * <p>Each arrow's mean is uncertain by its shots' scatter and by the error of its own known length.
 * Gates that see unlike lengths make W uncertain by where between the two the truth lies.
 *
 * @param shots the number of shots with a known length
 * @param arrows the number of arrows among them
 * @param apartM the longest known length less the shortest, in metres
 * @param spacingM the spacing that the lengths tell
 * @param widthM W, as the lengths and what was believed before tell it
 * @param statedM the spacing with which the speeds were reckoned
 */
public record SpacingFromLengths(
    int shots, int arrows, double apartM, Quantity spacingM, Quantity widthM, Quantity statedM) {
  /**
   * What is known of W where nobody measured it: a beam's width and a nock's shape make it more or
   * less (assumed).
   */
  public static final Quantity WIDTH_M =
      Quantity.of(0, 0.0015, Source.common("width of the gates"));

  /** Lengths as far apart as this tell the width beside the spacing (assumed). */
  public static final double APART_M = 0.1;

  /**
   * The share of sessions whose spacing is doubted wrongly where all uncertainties are honest; it
   * leaves room for the other statements within one session in a hundred.
   */
  private static final double ALPHA = 0.004;

  /**
   * @param all the shots of one calibration, those of arrows that nobody measured among them
   * @param statedM the spacing with which the shots' speeds were reckoned
   * @param triggerM the trigger scatter, above 0
   * @param widthM what is known of W, its uncertainty above 0
   * @return empty with fewer than ten shots of known length
   */
  public static Optional<SpacingFromLengths> of(
      List<GateShot> all, Quantity statedM, double triggerM, Quantity widthM) {
    List<GateShot> shots = all.stream().filter(shot -> shot.known().isPresent()).toList();
    if (shots.size() < FrontOverTail.ENOUGH) {
      return Optional.empty();
    }
    Map<String, List<GateShot>> byArrow =
        shots.stream()
            .collect(
                Collectors.groupingBy(
                    known -> length(known).arrow(), TreeMap::new, Collectors.toList()));
    List<LengthLine.Point> points =
        byArrow.values().stream().map(arrow -> point(arrow, statedM.value(), triggerM)).toList();
    double widthUM = Math.hypot(widthM.standardUncertainty(), unevenUM(shots, triggerM));
    LengthLine line = LengthLine.through(points, widthM.value(), widthUM);
    DoubleSummaryStatistics lengths =
        points.stream().mapToDouble(LengthLine.Point::knownM).summaryStatistics();
    double spacing = statedM.value() / line.slope();
    return Optional.of(
        new SpacingFromLengths(
            shots.size(),
            points.size(),
            lengths.getMax() - lengths.getMin(),
            Quantity.of(
                spacing,
                spacing * line.slopeU() / line.slope(),
                Source.common("spacing from lengths")),
            Quantity.of(line.widthM(), line.widthU(), Source.common("width from lengths")),
            statedM));
  }

  private static LengthLine.Point point(List<GateShot> arrow, double spacingM, double triggerM) {
    KnownLength known = length(arrow.get(0));
    // Four triggers move the mean of both blocked times, and by way of the speed the length again.
    double believed = triggerM * Math.hypot(1, known.m() / spacingM);
    double[] seen = arrow.stream().mapToDouble(GateShot::lengthM).toArray();
    TrimmedMean mean = TrimmedMean.of(seen, believed, FrontOverTail.BELIEVED_SHOTS);
    double error = mean.standardError();
    return new LengthLine.Point(known.m(), mean.mean(), error * error + known.uM() * known.uM());
  }

  /** The mean of both gates is off by anything up to half of what they differ by. */
  private static double unevenUM(List<GateShot> shots, double triggerM) {
    double apart = FrontOverTail.of(shots, triggerM).orElseThrow().meanM();
    return Math.abs(apart) / (2 * Math.sqrt(3));
  }

  private static KnownLength length(GateShot shot) {
    return shot.known().orElseThrow();
  }

  /** The spacing that the lengths tell less the stated one, in metres. */
  public Quantity differenceM() {
    return spacingM.minus(statedM);
  }

  /** Whether both spacings are farther apart than their uncertainties together allow. */
  public boolean disagrees() {
    return differenceM().pValue() < ALPHA;
  }

  /** Whether the arrows' lengths told the width, rather than what was believed of it before. */
  public boolean tellsWidth() {
    return apartM >= APART_M;
  }
}
