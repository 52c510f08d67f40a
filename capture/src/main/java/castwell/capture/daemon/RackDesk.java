package castwell.capture.daemon;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.capture.daemon.Refused.Why;
import castwell.capture.store.Feed;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Rack.Measures;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;

/** What a person says about bows and arrows; committed before anyone is told. */
public final class RackDesk {
  private final Store store;
  private final Reprocessing reprocessing;
  private final Announcer announcer;
  private final Clock clock;

  /** A bow from an instant on. */
  public record State(
      Instant since, double drawWeightN, double drawLengthM, Measures measures, String done) {}

  /** What is known of an arrow. */
  public record ArrowMeasures(
      double massKg,
      OptionalDouble lengthM,
      OptionalDouble diameterM,
      Optional<String> point,
      Optional<String> note) {
    static ArrowMeasures of(double massKg, OptionalDouble lengthM, OptionalDouble diameterM) {
      return new ArrowMeasures(massKg, lengthM, diameterM, Optional.empty(), Optional.empty());
    }
  }

  RackDesk(Store store, Reprocessing reprocessing, Announcer announcer, Clock clock) {
    this.store = store;
    this.reprocessing = reprocessing;
    this.announcer = announcer;
    this.clock = clock;
  }

  /** A new bow and its first state. */
  public void addBow(
      String name, Instant since, double drawWeightN, double drawLengthM, String done) {
    addBow(name, new State(since, drawWeightN, drawLengthM, Measures.NONE, done));
  }

  public void addBow(String name, State state) {
    String checked = Checks.name("A bow", name);
    write(
        t -> {
          if (t.rack().bow(checked).isPresent()) {
            throw new Refused(
                Why.CONFLICT,
                "There is a bow named %s already: choose another name.".formatted(checked));
          }
          enterState(t, checked, state, clock.instant());
        });
  }

  /** Something was done to a bow: from then on it is in another state. */
  public void addState(String bow, State state) {
    write(t -> enterState(t, bow(t, bow).name(), state, clock.instant()));
  }

  /** Within a transaction; a bow that isn't there yet is added. */
  public static void enterState(Transaction t, String bow, State state, Instant entered) {
    long bowId =
        t.rack()
            .bow(bow)
            .map(Rack.Named::id)
            .orElseGet(() -> t.rack().addBow(Checks.name("A bow", bow), entered));
    t.rack()
        .addState(
            bowId,
            state.since(),
            Checks.drawWeightN(state.drawWeightN()),
            Checks.drawLengthM(state.drawLengthM()),
            Checks.measures(state.measures()),
            Checks.text("What was done to a bow", state.done()),
            entered);
    t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
  }

  public void addArrow(
      String name, double massKg, OptionalDouble lengthM, OptionalDouble diameterM) {
    addArrow(name, ArrowMeasures.of(massKg, lengthM, diameterM));
  }

  public void addArrow(String name, ArrowMeasures measures) {
    String checked = Checks.name("An arrow", name);
    write(
        t -> {
          if (t.rack().arrow(checked).isPresent()) {
            throw new Refused(
                Why.CONFLICT,
                "There is an arrow named %s already: choose another name.".formatted(checked));
          }
          enterArrow(t, checked, measures);
        });
  }

  /** An arrow measured anew: what is entered now holds for all of its shots. */
  public void enterArrow(
      String name, double massKg, OptionalDouble lengthM, OptionalDouble diameterM) {
    enterArrow(name, ArrowMeasures.of(massKg, lengthM, diameterM));
  }

  public void enterArrow(String name, ArrowMeasures measures) {
    write(t -> enterArrow(t, arrow(t, name).name(), measures));
  }

  /** Within a transaction; an arrow that isn't there yet is added. */
  public void enterArrow(Transaction t, String name, ArrowMeasures measures) {
    Optional<Rack.Named> known = t.rack().arrow(name);
    long id =
        known
            .map(Rack.Named::id)
            .orElseGet(() -> t.rack().addArrow(Checks.name("An arrow", name), clock.instant()));
    t.rack()
        .enterArrow(
            id,
            Checks.arrowMassKg(measures.massKg()),
            Checks.arrowLengthM(measures.lengthM()),
            Checks.arrowDiameterM(measures.diameterM()),
            Checks.words("An arrow's point", measures.point()),
            Checks.words("A note", measures.note()),
            clock.instant());
    if (known.isPresent()) {
      t.passages().ofArrow(id).forEach(row -> reprocessing.again(t, row));
      t.feed().add(Feed.Kind.REFRESH, "", OptionalLong.empty());
    }
    t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
  }

  /** Out of use, or taken up again: nothing of it is lost. */
  public void retireBow(String name, boolean retired, String by) {
    write(
        t -> {
          t.retirements().bow(bow(t, name).id(), retired, clock.instant(), by);
          t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
        });
  }

  public void retireArrow(String name, boolean retired, String by) {
    write(
        t -> {
          t.retirements().arrow(arrow(t, name).id(), retired, clock.instant(), by);
          t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
        });
  }

  /** An arrow was put on the scale once more: the mean of all its weighings is its mass now. */
  public void weigh(String name, double massKg, String by) {
    double checked = Checks.arrowMassKg(massKg);
    write(
        t -> {
          Rack.Arrow arrow = t.rack().arrowById(arrow(t, name).id()).orElseThrow();
          t.weighings().add(arrow.id(), checked, clock.instant(), by);
          double mean =
              t.weighings().of(arrow.id()).stream().mapToDouble(kg -> kg).average().orElseThrow();
          enterArrow(
              t,
              arrow.name(),
              new ArrowMeasures(
                  mean, arrow.lengthM(), arrow.diameterM(), arrow.point(), arrow.note()));
        });
  }

  /** A curve was measured of the state that the bow was in at an instant. */
  public void addForceDraw(String bow, Instant at, List<Point> points, String by) {
    write(t -> enterForceDraw(t, bow, at, points, clock.instant(), by));
  }

  /** Within a transaction. */
  public static void enterForceDraw(
      Transaction t, String bow, Instant at, List<Point> points, Instant entered, String by) {
    long bowId = bow(t, bow).id();
    BowState state = t.rack().state(bowId, at).orElseThrow();
    Checks.forceDraw(points);
    t.forceDraws().add(bowId, state.since(), points, entered, by);
    t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
  }

  private void write(Consumer<Transaction> work) {
    store.writing(work);
    announcer.fedMore();
  }

  public static Rack.Named bow(Transaction t, String name) {
    return t.rack()
        .bow(name)
        .orElseThrow(
            () ->
                new Refused(
                    Why.NOT_FOUND,
                    "There is no bow named %s: add it to the rack, or mend the name."
                        .formatted(name)));
  }

  public static Rack.Named arrow(Transaction t, String name) {
    return t.rack()
        .arrow(name)
        .orElseThrow(
            () ->
                new Refused(
                    Why.NOT_FOUND,
                    "There is no arrow named %s: add it to the rack, or mend the name."
                        .formatted(name)));
  }
}
