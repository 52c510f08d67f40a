package castwell.analysis.speed;

import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.Objects;

/**
 * How the gates stand, how well they see, and what else may make their speeds wrong.
 *
 * @param spacingM the distance from gate A to gate B, above 0
 * @param spacingUM standard uncertainty of the spacing, in metres; common to every shot
 * @param triggerScatterM standard deviation of the place on the object at which one gate triggers
 *     on one edge, in metres; each edge has its own error
 * @param gatesFromBowM the distance from the bow to gate A, at least 0
 * @param oscillator the part that keeps the board's time
 * @param isMeasured whether somebody measured the spacing; if nobody did, its uncertainty is that
 *     of gates put up by eye
 * @param errors what makes every speed wrong alike and no edge tells
 */
public record Calibration(
    double spacingM,
    double spacingUM,
    double triggerScatterM,
    double gatesFromBowM,
    Oscillator oscillator,
    boolean isMeasured,
    SetUpErrors errors) {

  /**
   * The standard uncertainty of a spacing that nobody measured: gates put up by tape and by eye, as
   * the notes on measuring the spacing reckon it.
   */
  public static final double UNMEASURED_U_M = 0.0038;

  /**
   * The spacing that settings begin with, 24 in, and the uncertainty that measuring it would leave.
   */
  public static final double UNTOUCHED_M = 0.6096;

  public static final double UNTOUCHED_U_M = 0.0003;

  private static final double SAME_M = 1e-9;

  private static final Source SPACING = Source.common("gate spacing");

  /**
   * @throws IllegalArgumentException when a length is out of its range
   */
  public Calibration {
    if (!(spacingM > 0 && Double.isFinite(spacingM))) {
      throw new IllegalArgumentException("the gate spacing lies above 0 m, not at " + spacingM);
    }
    atLeastZero("the gate spacing's standard uncertainty", spacingUM);
    atLeastZero("the trigger scatter", triggerScatterM);
    atLeastZero("the distance from the bow to gate A", gatesFromBowM);
    Objects.requireNonNull(oscillator, "oscillator");
    Objects.requireNonNull(errors, "errors");
  }

  /** Measured gates without any error beyond those of spacing, triggers and clock. */
  public Calibration(
      double spacingM,
      double spacingUM,
      double triggerScatterM,
      double gatesFromBowM,
      Oscillator oscillator) {
    this(spacingM, spacingUM, triggerScatterM, gatesFromBowM, oscillator, true, SetUpErrors.NONE);
  }

  /** The same gates, whose spacing nobody measured. */
  public Calibration unmeasured() {
    return new Calibration(
        spacingM,
        Math.max(spacingUM, UNMEASURED_U_M),
        triggerScatterM,
        gatesFromBowM,
        oscillator,
        false,
        errors);
  }

  /**
   * The same gates with a spacing that somebody says. Whoever says another than there was, or
   * another uncertainty of it, measured it.
   */
  public Calibration spaced(double otherSpacingM, double otherSpacingUM) {
    boolean isAsBefore =
        Math.abs(otherSpacingM - spacingM) < SAME_M
            && Math.abs(otherSpacingUM - spacingUM) < SAME_M;
    return new Calibration(
        otherSpacingM,
        otherSpacingUM,
        triggerScatterM,
        gatesFromBowM,
        oscillator,
        isMeasured || !isAsBefore,
        errors);
  }

  /** The same gates, whose triggers are known to scatter so. */
  public Calibration withTriggerScatter(double metres) {
    return new Calibration(
        spacingM, spacingUM, metres, gatesFromBowM, oscillator, isMeasured, errors);
  }

  public boolean isSameButForErrors(Calibration other) {
    return with(other.errors).equals(other);
  }

  public Calibration with(SetUpErrors other) {
    return new Calibration(
        spacingM, spacingUM, triggerScatterM, gatesFromBowM, oscillator, isMeasured, other);
  }

  /** A speed over these gates with what the errors of the set-up add to its common uncertainty. */
  public Quantity common(Quantity speed) {
    return errors.on(speed, spacingM);
  }

  /** The spacing in metres as a quantity, uncertain by the common source "gate spacing". */
  public Quantity spacing() {
    return Quantity.of(spacingM, spacingUM, SPACING);
  }

  /**
   * The distance from the bow to the middle between the gates, in metres, where the measured speed
   * holds.
   */
  public double middleFromBowM() {
    return gatesFromBowM + spacingM / 2;
  }

  private static void atLeastZero(String what, double metres) {
    if (!(metres >= 0 && Double.isFinite(metres))) {
      throw new IllegalArgumentException(what + " is at least 0 m, not " + metres);
    }
  }
}
