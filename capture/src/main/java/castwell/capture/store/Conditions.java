package castwell.capture.store;

import castwell.analysis.reading.Known;
import castwell.analysis.speed.TickRate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Under what a figure was derived, beside the passage's edges, its calibration and its tags.
 *
 * @param readHz the board's tick rate as it was known when the edges were read
 * @param hz the board's tick rate as it is known now, which the speeds follow, with its relative
 *     standard uncertainty
 * @param airDensity in kg/m3, for the drag on the way to the gates
 * @param gates what the session tells of its gates
 * @param tagged what the tags tell
 * @param strays what the gates saw in the second before that was no arrow
 */
public record Conditions(
    double readHz,
    double hz,
    double hzRelativeU,
    double airDensity,
    SessionTold gates,
    Tagged tagged,
    Strays strays) {

  /** Those of a speed that was read off another display, for which nothing was derived. */
  static final Conditions NONE =
      new Conditions(
          Double.NaN,
          Double.NaN,
          Double.NaN,
          Double.NaN,
          SessionTold.UNKNOWN,
          Tagged.NOTHING,
          Strays.NONE);

  /**
   * What a session's shots tell of its gates.
   *
   * @param triggerM the scatter of the place on the arrow at which a gate triggers, in metres;
   *     empty for the calibration's
   * @param tailLateM how far the arrow was, in metres, beyond where it should have been when its
   *     tail was seen at both gates; 0 where nothing is to be corrected
   * @param tailLateUM what part of it may as well be the gates' doing, as a standard uncertainty
   *     that all its shots share
   */
  public record SessionTold(OptionalDouble triggerM, double tailLateM, double tailLateUM) {
    public static final SessionTold UNKNOWN = new SessionTold(OptionalDouble.empty(), 0, 0);

    /** What changes no uncertainty by more than this share isn't worth reading edges anew. */
    private static final double WORTH = 0.05;

    /** Nor what moves no speed by more than 0.02 %, at gates as far apart as is usual. */
    private static final double WORTH_M = 0.25e-3;

    /** Whether these tell so much else than those that edges are worth reading anew. */
    public boolean isNewsTo(SessionTold before) {
      boolean corrected = tailLateM != 0;
      return before.triggerM.isEmpty() != triggerM.isEmpty()
          || corrected != (before.tailLateM != 0)
          || Math.abs(tailLateM - before.tailLateM) > WORTH_M
          || (tailLateUM == 0) != (before.tailLateUM == 0)
          || triggerM.isPresent()
              && Math.abs(triggerM.getAsDouble() / before.triggerM.getAsDouble() - 1) > WORTH;
    }
  }

  /**
   * What the tags of a passage tell of it.
   *
   * @param lengthM the arrow's length in metres; empty where nobody measured it
   * @param cellSpeed the speed in m/s that this bow and arrow had in the session until then, and
   *     how it scatters; empty while that isn't known
   */
  public record Tagged(OptionalDouble lengthM, Optional<Known> cellSpeed) {
    public static final Tagged NOTHING = new Tagged(OptionalDouble.empty(), Optional.empty());
  }

  /** How often each gate was blocked by something that was no arrow. */
  public record Strays(int a, int b) {
    public static final Strays NONE = new Strays(0, 0);
  }

  public TickRate rate() {
    return new TickRate(hz, hzRelativeU);
  }

  /** The same with the rate as it was known when the edges were read. */
  public Conditions asRead() {
    return readAt(new TickRate(readHz, hzRelativeU));
  }

  /** The same for edges that are read at this rate. */
  public Conditions readAt(TickRate rate) {
    return new Conditions(
        rate.hz(), rate.hz(), rate.relativeU(), airDensity, gates, tagged, strays);
  }

  /** The same for figures that follow the rate from when their edges were read. */
  public Conditions at(TickRate rate) {
    return new Conditions(readHz, rate.hz(), rate.relativeU(), airDensity, gates, tagged, strays);
  }

  public Conditions with(SessionTold anew) {
    return new Conditions(readHz, hz, hzRelativeU, airDensity, anew, tagged, strays);
  }

  public Conditions with(Tagged anew) {
    return new Conditions(readHz, hz, hzRelativeU, airDensity, gates, anew, strays);
  }
}
