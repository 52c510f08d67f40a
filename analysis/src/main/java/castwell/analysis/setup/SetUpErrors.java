package castwell.analysis.setup;

import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What makes every speed of a set-up wrong by the same share and can't be told from its edges. Each
 * is a bound of which nothing more is known, so its distribution is rectangular (JCGM 100:2008,
 * 4.3.7). Nothing is corrected by them: where an error can only have one sign, its root mean square
 * stands for its uncertainty, which holds the mean that isn't corrected (F.2.4.5).
 *
 * @param path how far the arrows' path may be from the line through the gates
 * @param planes how far the gates may be from parallel
 * @param rails how far the rails may have grown since they were measured
 * @param latencyUnlikeS by how much one gate's stamps may be later than the other's, in seconds
 * @param dragPerMetre the greatest share of its speed that an arrow may lose per metre
 */
public record SetUpErrors(
    ObliquePath path,
    UnparallelPlanes planes,
    WarmRails rails,
    double latencyUnlikeS,
    double dragPerMetre) {

  public static final Source LATENCIES = Source.common("gates' latencies");
  static final Source DRAG = Source.common("drag between the gates");

  /** A set-up without any of these errors. */
  public static final SetUpErrors NONE =
      new SetUpErrors(new ObliquePath(0), new UnparallelPlanes(0, 0), new WarmRails(0, 0), 0, 0);

  /**
   * The errors of gates that nobody looked at more closely: 3 degrees show when an arrow is held
   * through both gates; planes are mended from 1 mm on; of aluminium, steel and wood aluminium
   * grows most; two comparators of one kind take 1 to 5 microseconds; and twice the drag of an
   * ordinary arrow.
   */
  public static final SetUpErrors USUAL =
      new SetUpErrors(
          new ObliquePath(3),
          new UnparallelPlanes(0.001, 0.1),
          new WarmRails(23e-6, 20),
          4e-6,
          0.005);

  /**
   * @throws IllegalArgumentException when a value is out of its range
   */
  public SetUpErrors {
    Bound.check("the difference of the gates' latencies", latencyUnlikeS, 1);
    Bound.check("the drag per metre", dragPerMetre, 1);
  }

  /** What each of them makes of a speed, as a share of it: always one standard uncertainty. */
  List<Share> shares(double speedMps, double spacingM) {
    return List.of(
        new Share(ObliquePath.SOURCE, path.relativeU()),
        new Share(UnparallelPlanes.SOURCE, planes.standardUncertaintyM() / spacingM),
        new Share(WarmRails.SOURCE, rails.relativeU()),
        new Share(LATENCIES, latencyUnlikeS / Math.sqrt(3) * Math.abs(speedMps) / spacingM),
        new Share(DRAG, dragBetween(spacingM) / Math.sqrt(5)));
  }

  /** A speed with what these errors add to its common uncertainty. */
  public Quantity on(Quantity speed, double spacingM) {
    Map<Source, Double> contributions = new LinkedHashMap<>(speed.contributions());
    for (Share share : shares(speed.value(), spacingM)) {
      if (share.relativeU() > 0) {
        contributions.merge(share.source(), share.relativeU() * speed.value(), Double::sum);
      }
    }
    return new Quantity(speed.value(), contributions);
  }

  /**
   * How much lower the mean speed from gate to gate is than the one in the middle between them: an
   * arrow slows down as exp(-k x), so 1 - (k S / 2) / sinh(k S / 2), which is (k S)^2 / 24; its
   * root mean square for a rectangular k is a root of 5 smaller.
   */
  private double dragBetween(double spacingM) {
    double loss = dragPerMetre * spacingM;
    return loss * loss / 24;
  }

  /**
   * @param relativeU a standard uncertainty as a share of the speed
   */
  record Share(Source source, double relativeU) {}
}
