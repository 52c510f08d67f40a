package castwell.analysis.compare;

import castwell.analysis.air.Drag;
import castwell.analysis.bow.StringMass;
import castwell.analysis.unit.Units;
import castwell.analysis.wood.EquilibriumMoisture;
import castwell.analysis.wood.Stiffness;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The conditions of one day, which tell what else differed between two days and how large a change
 * of speed that could explain.
 *
 * @param gatesFromBowM the distance from the bow to the middle between the gates
 * @param celsius the air's temperature, in degrees C
 * @param relativeHumidity the air's humidity, 0 to 1
 * @param stringMassKg the mass of the bow's string
 */
public record Conditions(
    OptionalDouble gatesFromBowM,
    OptionalDouble celsius,
    OptionalDouble relativeHumidity,
    OptionalDouble stringMassKg) {

  /**
   * The modulus of elasticity at 12 % moisture over that of green wood; white ash stands for all
   * woods.
   */
  private static final double TWELVE_PERCENT_OVER_GREEN = 1.74 / 1.44;

  private static final double ASH_INTERSECTION_PERCENT = 24;

  /** A typical arrow's diameter, 11/32 in, since the arrow's own isn't known here. */
  private static final double DIAMETER_M = 11.0 / 32 * Units.METRES_PER_INCH;

  private static final double AIR_DENSITY = 1.2;

  /** A condition that may differ. */
  public enum What {
    GATES,
    TEMPERATURE,
    MOISTURE,
    STRING
  }

  /**
   * A condition that differs, or that isn't known for both days.
   *
   * @param by how much larger it is than on the earlier day, in m, °C, percent or kg; empty where
   *     it isn't known
   * @param relativeSpeed the relative change of speed that this difference alone would make; empty
   *     where it isn't known
   */
  public record Difference(What what, OptionalDouble by, OptionalDouble relativeSpeed) {}

  /**
   * The differences from an earlier day, including the conditions that aren't known.
   *
   * @param virtualMassKg the bow's own, beside the arrow's
   */
  public List<Difference> since(Conditions before, double arrowMassKg, double virtualMassKg) {
    List<Difference> found = new ArrayList<>();
    distance(before, arrowMassKg, found);
    temperature(before, found);
    moisture(before, found);
    string(before, arrowMassKg + virtualMassKg, found);
    return found;
  }

  private void distance(Conditions before, double massKg, List<Difference> found) {
    if (gatesFromBowM.isPresent() && before.gatesFromBowM.isPresent()) {
      double farther = gatesFromBowM.getAsDouble() - before.gatesFromBowM.getAsDouble();
      double loss =
          Drag.lossPerMetre(Drag.unmeasuredCoefficient(), DIAMETER_M, massKg, AIR_DENSITY).value();
      add(found, What.GATES, -loss * farther, farther, 0.005);
    } else {
      unknown(found, What.GATES);
    }
  }

  private void temperature(Conditions before, List<Difference> found) {
    if (celsius.isPresent() && before.celsius.isPresent()) {
      double warmer = celsius.getAsDouble() - before.celsius.getAsDouble();
      add(found, What.TEMPERATURE, Stiffness.relativeChange(warmer) / 2, warmer, 0.05);
    } else {
      unknown(found, What.TEMPERATURE);
    }
  }

  private void moisture(Conditions before, List<Difference> found) {
    OptionalDouble now = moisture();
    OptionalDouble then = before.moisture();
    if (now.isPresent() && then.isPresent()) {
      double wetter = now.getAsDouble() - then.getAsDouble();
      double stiffer = stiffness(now.getAsDouble()) / stiffness(then.getAsDouble()) - 1;
      add(found, What.MOISTURE, stiffer / 2, wetter, 0.05);
    } else {
      unknown(found, What.MOISTURE);
    }
  }

  /** The stiffness over that of green wood; speed goes as its square root. */
  private static double stiffness(double moisturePercent) {
    return Stiffness.atMoisture(
        TWELVE_PERCENT_OVER_GREEN, 1, moisturePercent, ASH_INTERSECTION_PERCENT);
  }

  private OptionalDouble moisture() {
    return celsius.isPresent() && relativeHumidity.isPresent()
        ? OptionalDouble.of(
            EquilibriumMoisture.percent(celsius.getAsDouble(), relativeHumidity.getAsDouble()))
        : OptionalDouble.empty();
  }

  private void string(Conditions before, double moving, List<Difference> found) {
    if (stringMassKg.isPresent() && before.stringMassKg.isPresent()) {
      double heavier = stringMassKg.getAsDouble() - before.stringMassKg.getAsDouble();
      double relative = Math.sqrt(moving / StringMass.virtualMassKg(moving, heavier)) - 1;
      add(found, What.STRING, relative, heavier, Units.KILOGRAMS_PER_GRAIN / 2);
    } else {
      unknown(found, What.STRING);
    }
  }

  /** Adds a difference, unless it is so small that it would be shown as 0. */
  private static void add(
      List<Difference> found, What what, double relative, double by, double least) {
    if (Math.abs(by) >= least) {
      found.add(new Difference(what, OptionalDouble.of(by), OptionalDouble.of(relative)));
    }
  }

  private static void unknown(List<Difference> found, What what) {
    found.add(new Difference(what, OptionalDouble.empty(), OptionalDouble.empty()));
  }
}
