package castwell.capture.intake;

import castwell.capture.command.Alike;
import castwell.capture.command.ArrowCommands;
import castwell.capture.intake.sheet.Line;
import castwell.capture.intake.sheet.Once;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.Named;
import castwell.capture.store.Transaction;
import java.util.Locale;
import java.util.Optional;

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
    double massKg = line.neededNumber("mass");
    Measures<ArrowMeasure> before = there.map(Arrow::measures).orElseGet(Measures::none);
    Measures<ArrowMeasure> told =
        Measures.of(
                ArrowMeasure.values(),
                measure -> line.number(measure.stem(), before.number(measure)),
                measure -> line.words(measure.stem()).or(() -> before.words(measure)))
            .completed(ArrowMeasure.values());
    if (there.isPresent()
        && Alike.are(massKg, there.get().massKg())
        && Alike.are(ArrowMeasure.values(), told, before)) {
      tally.already();
    } else {
      arrows.enter(t, name, massKg, told);
      tally.take();
    }
  }

  @Override
  public Tally tally() {
    return tally;
  }
}
