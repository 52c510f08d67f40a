package castwell.capture.command;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.capture.announce.AnnouncedStore;
import castwell.capture.command.Refused.Why;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Feed;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;

/** What a person can do with bows. Each command is committed before anyone is told of it. */
public final class BowCommands {
  private final AnnouncedStore store;
  private final Clock clock;

  /** A bow's state from an instant on. */
  public record State(
      Instant since,
      double drawWeightN,
      double drawLengthM,
      Measures<BowMeasure> measures,
      String done) {}

  BowCommands(AnnouncedStore store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /** Adds a bow with its first state. */
  public void add(String name, Instant since, double drawWeightN, double drawLengthM, String done) {
    add(name, new State(since, drawWeightN, drawLengthM, Measures.none(), done));
  }

  public void add(String name, State state) {
    String checked = Checks.name("refused.what_bow", name);
    store.writing(
        t -> {
          if (t.rack().bow(checked).isPresent()) {
            throw Refused.of(Why.CONFLICT, "refused.bow_taken", checked);
          }
          enterState(t, checked, state, clock.instant());
        });
  }

  /** Adds a state: something was done to the bow, which is another one from then on. */
  public void addState(String bow, State state) {
    store.writing(t -> enterState(t, bow(t, bow).name(), state, clock.instant()));
  }

  /** Enters a bow's state within a transaction, adding the bow if there is none of that name. */
  public static void enterState(Transaction t, String bow, State state, Instant entered) {
    long bowId =
        t.rack()
            .bow(bow)
            .map(Rack.Named::id)
            .orElseGet(() -> t.rack().addBow(Checks.name("refused.what_bow", bow), entered));
    t.rack()
        .addState(
            bowId,
            state.since(),
            Checks.drawWeightN(state.drawWeightN()),
            Checks.drawLengthM(state.drawLengthM()),
            Checks.measures(BowMeasure.values(), state.measures()),
            Checks.text("refused.what_what_was_done_to_a_bow", state.done()),
            entered);
    t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
  }

  /** Takes a bow out of use or back into use. Nothing of it is lost. */
  public void retire(String name, boolean retired, String by) {
    store.writing(
        t -> {
          t.retirements().bow(bow(t, name).id(), retired, clock.instant(), by);
          t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
        });
  }

  /** Adds a force-draw curve, measured of the state that the bow was in at an instant. */
  public void addForceDraw(String bow, Instant at, List<Point> points, String by) {
    store.writing(t -> enterForceDraw(t, bow, at, points, clock.instant(), by));
  }

  /** Adds a force-draw curve within a transaction. */
  public static void enterForceDraw(
      Transaction t, String bow, Instant at, List<Point> points, Instant entered, String by) {
    long bowId = bow(t, bow).id();
    BowState state = t.rack().state(bowId, at).orElseThrow();
    Checks.forceDraw(points);
    t.forceDraws().add(bowId, state.since(), points, entered, by);
    t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
  }

  public static Rack.Named bow(Transaction t, String name) {
    return t.rack().bow(name).orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_bow", name));
  }
}
