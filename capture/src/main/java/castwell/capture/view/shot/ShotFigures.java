package castwell.capture.view.shot;

import castwell.analysis.air.AtBow;
import castwell.analysis.speed.KineticEnergy;
import castwell.analysis.speed.Momentum;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import castwell.analysis.unit.Units;
import castwell.capture.store.Shot;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Figures that follow from a shot's speed and its tags, in SI units; one is empty where what it
 * needs isn't known.
 */
public final class ShotFigures {
  private ShotFigures() {}

  public static Optional<Quantity> speed(Shot shot) {
    var figure = shot.figure();
    if (figure.speedMps().isEmpty()) {
      return Optional.empty();
    }
    double speed = figure.speedMps().getAsDouble();
    Quantity own = Quantity.of(speed, figure.speedUOwnMps().orElse(0), Source.own("this shot"));
    Quantity common =
        Quantity.of(0, figure.speedUCommonMps().orElse(0), Source.common("the set-up"));
    return Optional.of(own.plus(common));
  }

  public static Optional<Quantity> kineticEnergy(Shot shot) {
    return speed(shot).flatMap(v -> mass(shot).map(m -> KineticEnergy.of(m, v)));
  }

  public static Optional<Quantity> momentum(Shot shot) {
    return speed(shot).flatMap(v -> mass(shot).map(m -> Momentum.of(m, v)));
  }

  /** The mass that was weighed. Beside the speed's uncertainty it counts as exact. */
  private static Optional<Quantity> mass(Shot shot) {
    return shot.arrow().map(arrow -> Quantity.exact(arrow.massKg()));
  }

  /**
   * The speed at the bow: what the air took on the way to the gates is added again, which needs the
   * arrow's diameter.
   */
  public static Optional<Quantity> speedAtBow(Shot shot) {
    OptionalDouble diameter =
        shot.arrow().map(arrow -> arrow.diameterM()).orElse(OptionalDouble.empty());
    if (diameter.isEmpty() || shot.byGates().isEmpty()) {
      return Optional.empty();
    }
    AtBow atBow =
        AtBow.of(
            diameter.getAsDouble(),
            shot.arrow().orElseThrow().massKg(),
            shot.figure().conditions().airDensity(),
            shot.byGates().get().middleFromBowM());
    return speed(shot).map(atBow::of);
  }

  public static Optional<Double> grainsPerPound(Shot shot) {
    return shot.arrow()
        .flatMap(
            arrow ->
                shot.bow().map(bow -> Units.grainsPerPound(arrow.massKg(), bow.drawWeightN())));
  }

  static Optional<Double> part(Optional<Quantity> quantity, Kind kind, double unit) {
    return quantity.map(q -> q.standardUncertainty(kind) / unit);
  }
}
