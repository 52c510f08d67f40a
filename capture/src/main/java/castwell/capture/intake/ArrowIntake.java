package castwell.capture.intake;

import castwell.capture.command.Alike;
import castwell.capture.command.ArrowCommands;
import castwell.capture.command.ArrowCommands.Measures;
import castwell.capture.intake.sheet.Line;
import castwell.capture.intake.sheet.Once;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.Named;
import castwell.capture.store.Transaction;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Takes in arrows. Values of a known arrow that a line doesn't give stay as they were. */
final class ArrowIntake implements Intake {
  private final Transaction t;
  private final ArrowCommands arrows;
  private final Once once = new Once();
  private final Tally tally = new Tally();

  ArrowIntake(Transaction t, ArrowCommands arrows) {
    this.t = t;
    this.arrows = arrows;
  }

  @Override
  public void take(Line line) {
    String name = line.neededWords("arrow");
    once.refuseTwice(line, name.toLowerCase(Locale.ROOT), name);
    Optional<Arrow> there = t.rack().arrow(name).map(Named::id).flatMap(t.rack()::arrowById);
    Measures told =
        new Measures(
            line.neededNumber("mass"),
            line.number("length", there.map(Arrow::lengthM).orElse(OptionalDouble.empty())),
            line.number("diameter", there.map(Arrow::diameterM).orElse(OptionalDouble.empty())),
            line.words("point").or(() -> there.flatMap(Arrow::point)),
            line.words("note").or(() -> there.flatMap(Arrow::note)));
    if (there.isPresent() && same(told, there.get())) {
      tally.already();
    } else {
      arrows.enter(t, name, told);
      tally.take();
    }
  }

  private static boolean same(Measures told, Arrow there) {
    return Alike.are(told.massKg(), there.massKg())
        && Alike.are(told.lengthM(), there.lengthM())
        && Alike.are(told.diameterM(), there.diameterM())
        && told.point().equals(there.point())
        && told.note().equals(there.note());
  }

  @Override
  public Tally tally() {
    return tally;
  }
}
