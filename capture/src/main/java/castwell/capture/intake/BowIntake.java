package castwell.capture.intake;

import castwell.capture.command.Alike;
import castwell.capture.command.BowCommands;
import castwell.capture.command.BowCommands.State;
import castwell.capture.intake.sheet.Line;
import castwell.capture.intake.sheet.Once;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.capture.view.StateName;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Takes in bows, one state a line. Values of a known state that a line doesn't give stay as they
 * were.
 */
final class BowIntake implements Intake {
  private final Transaction t;
  private final ZoneId zone;
  private final Instant now;
  private final Once once = new Once();
  private final Tally tally = new Tally();

  BowIntake(Transaction t, ZoneId zone, Instant now) {
    this.t = t;
    this.zone = zone;
    this.now = now;
  }

  @Override
  public void take(Line line) {
    String bow = line.neededWords("bow");
    Instant since = since(line, zone);
    String name = StateName.of(since, zone);
    once.refuseTwice(line, (bow + "\n" + name).toLowerCase(Locale.ROOT), bow + " of " + name);
    Optional<BowState> there = state(t, bow, name, zone);
    State told = state(line, since, there);
    if (there.isPresent() && same(told, there.get())) {
      tally.already();
    } else {
      BowCommands.enterState(t, bow, told, now);
      tally.take();
    }
  }

  static Instant since(Line line, ZoneId zone) {
    line.neededWords("state_on");
    return line.when("state_on", zone).orElseThrow().begin(zone);
  }

  /** The state of that name. Names tell states apart here as they do in exports. */
  static Optional<BowState> state(Transaction t, String bow, String name, ZoneId zone) {
    List<BowState> states =
        t.rack().bow(bow).map(known -> t.rack().states(known.id())).orElse(List.of());
    return states.stream()
        .filter(state -> StateName.of(state.since(), zone).equals(name))
        .findFirst();
  }

  private static State state(Line line, Instant since, Optional<BowState> there) {
    Measures<BowMeasure> before = there.map(BowState::measures).orElseGet(Measures::none);
    return new State(
        there.map(BowState::since).orElse(since),
        line.neededNumber("draw_weight"),
        line.neededNumber("draw_length"),
        Measures.of(
            BowMeasure.values(),
            measure -> line.number(measure.stem(), before.number(measure)),
            measure -> line.words(measure.stem()).or(() -> before.words(measure))),
        line.words("done").or(() -> there.map(BowState::done)).orElse(""));
  }

  private static boolean same(State told, BowState there) {
    return Alike.are(told.drawWeightN(), there.drawWeightN())
        && Alike.are(told.drawLengthM(), there.drawLengthM())
        && Alike.are(BowMeasure.values(), told.measures(), there.measures())
        && told.done().equals(there.done());
  }

  @Override
  public Tally tally() {
    return tally;
  }
}
