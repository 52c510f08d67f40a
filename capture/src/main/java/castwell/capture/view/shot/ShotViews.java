package castwell.capture.view.shot;

import static castwell.analysis.unit.Units.JOULES_PER_FOOT_POUND;
import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static castwell.analysis.unit.Units.NEWTONS_PER_POUND;
import static castwell.analysis.unit.Units.NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND;

import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.wording.Wording;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import castwell.capture.store.Shot.ByGates;
import castwell.capture.view.InUnits;
import castwell.capture.view.StateName;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToIntFunction;

/**
 * Writes stored shots as they leave the program.
 *
 * @param zone the time zone in which a bow state's date is told
 * @param wording the language in which a reason is told
 */
public record ShotViews(ZoneId zone, Wording wording) {

  public ShotView of(Shot shot) {
    Optional<Quantity> speed = ShotFigures.speed(shot);
    Optional<Quantity> energy = ShotFigures.kineticEnergy(shot);
    Optional<Quantity> momentum = ShotFigures.momentum(shot);
    Optional<Quantity> atBow = ShotFigures.speedAtBow(shot);
    return new ShotView(
        shot.shotId(),
        shot.fired(),
        shot.byGates().map(ByGates::device),
        whole(shot, ByGates::boot),
        whole(shot, ByGates::firstEdge),
        shot.session(),
        shot.end(),
        shot.bow().map(BowState::bow),
        shot.bow().map(bow -> StateName.of(bow.since(), zone)),
        shot.arrow().map(Arrow::name),
        InUnits.of(shot.arrow().map(Arrow::massKg), KILOGRAMS_PER_GRAIN),
        InUnits.of(shot.bow().map(BowState::drawWeightN), NEWTONS_PER_POUND),
        InUnits.of(shot.bow().map(BowState::drawLengthM), METRES_PER_INCH),
        shot.counts(),
        shot.figure().verdict(),
        text(wording.say(shot.reasons())),
        value(speed, METRES_PER_FOOT),
        part(speed, Kind.OWN),
        part(speed, Kind.COMMON),
        InUnits.of(shot.figure().frontMps(), METRES_PER_FOOT),
        InUnits.of(shot.figure().tailMps(), METRES_PER_FOOT),
        InUnits.of(shot.figure().lengthM(), 1e-3),
        value(energy, JOULES_PER_FOOT_POUND),
        value(momentum, NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND),
        InUnits.of(ShotFigures.grainsPerPound(shot), 1),
        shot.station(),
        uncertainty(energy, JOULES_PER_FOOT_POUND),
        uncertainty(momentum, NEWTON_SECONDS_PER_SLUG_FOOT_PER_SECOND),
        value(atBow, METRES_PER_FOOT),
        uncertainty(atBow, METRES_PER_FOOT),
        shot.judgedByPerson() ? "person" : "rule",
        shot.byGates().isPresent() ? "by-gates" : "by-hand",
        note(shot),
        shot.byGates().map(ByGates::isMeasured));
  }

  private static OptionalInt whole(Shot shot, ToIntFunction<ByGates> number) {
    return shot.byGates().stream().mapToInt(number).findFirst();
  }

  private static Optional<String> text(String words) {
    return Optional.of(words).filter(said -> !said.isEmpty());
  }

  private static Optional<String> note(Shot shot) {
    return shot.origin() instanceof Shot.ByHand hand ? text(hand.note()) : Optional.empty();
  }

  private static OptionalDouble value(Optional<Quantity> quantity, double unit) {
    return InUnits.of(quantity.map(Quantity::value), unit);
  }

  private static OptionalDouble part(Optional<Quantity> speed, Kind kind) {
    return InUnits.of(speed.map(v -> v.standardUncertainty(kind)), METRES_PER_FOOT);
  }

  private static OptionalDouble uncertainty(Optional<Quantity> quantity, double unit) {
    return InUnits.of(quantity.map(Quantity::standardUncertainty), unit);
  }
}
