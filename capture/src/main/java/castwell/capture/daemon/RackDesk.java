package castwell.capture.daemon;

import castwell.capture.daemon.Refused.Why;
import castwell.capture.store.Feed;
import castwell.capture.store.Rack;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import java.time.Clock;
import java.time.Instant;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;

/** What a person says about bows and arrows; committed before anyone is told. */
public final class RackDesk {
  private final Store store;
  private final Reprocessing reprocessing;
  private final Announcer announcer;
  private final Clock clock;

  RackDesk(Store store, Reprocessing reprocessing, Announcer announcer, Clock clock) {
    this.store = store;
    this.reprocessing = reprocessing;
    this.announcer = announcer;
    this.clock = clock;
  }

  /** A new bow and its first state. */
  public void addBow(
      String name, Instant since, double drawWeightN, double drawLengthM, String done) {
    String checked = Checks.name("A bow", name);
    write(
        t -> {
          if (t.rack().bow(checked).isPresent()) {
            throw new Refused(
                Why.CONFLICT,
                "There is a bow named %s already: choose another name.".formatted(checked));
          }
          addState(
              t, t.rack().addBow(checked, clock.instant()), since, drawWeightN, drawLengthM, done);
        });
  }

  /** Something was done to a bow: from then on it is in another state. */
  public void addState(
      String bow, Instant since, double drawWeightN, double drawLengthM, String done) {
    write(t -> addState(t, bow(t, bow).id(), since, drawWeightN, drawLengthM, done));
  }

  private void addState(
      Transaction t,
      long bowId,
      Instant since,
      double drawWeightN,
      double drawLengthM,
      String done) {
    t.rack()
        .addState(
            bowId,
            since,
            Checks.drawWeightN(drawWeightN),
            Checks.drawLengthM(drawLengthM),
            Checks.text("What was done to a bow", done),
            clock.instant());
    t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
  }

  public void addArrow(
      String name, double massKg, OptionalDouble lengthM, OptionalDouble diameterM) {
    String checked = Checks.name("An arrow", name);
    write(
        t -> {
          if (t.rack().arrow(checked).isPresent()) {
            throw new Refused(
                Why.CONFLICT,
                "There is an arrow named %s already: choose another name.".formatted(checked));
          }
          enter(t, t.rack().addArrow(checked, clock.instant()), massKg, lengthM, diameterM);
        });
  }

  /** An arrow measured anew: what is entered now holds for all of its shots. */
  public void enterArrow(
      String name, double massKg, OptionalDouble lengthM, OptionalDouble diameterM) {
    write(
        t -> {
          long id = arrow(t, name).id();
          enter(t, id, massKg, lengthM, diameterM);
          t.passages().ofArrow(id).forEach(row -> reprocessing.again(t, row));
          t.feed().add(Feed.Kind.REFRESH, "", OptionalLong.empty());
        });
  }

  private void enter(
      Transaction t,
      long arrowId,
      double massKg,
      OptionalDouble lengthM,
      OptionalDouble diameterM) {
    t.rack()
        .enterArrow(
            arrowId,
            Checks.arrowMassKg(massKg),
            Checks.arrowLengthM(lengthM),
            Checks.arrowDiameterM(diameterM),
            clock.instant());
    t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
  }

  private void write(Consumer<Transaction> work) {
    store.writing(work);
    announcer.fedMore();
  }

  static Rack.Named bow(Transaction t, String name) {
    return t.rack()
        .bow(name)
        .orElseThrow(
            () ->
                new Refused(
                    Why.NOT_FOUND,
                    "There is no bow named %s: add it to the rack, or mend the name."
                        .formatted(name)));
  }

  static Rack.Named arrow(Transaction t, String name) {
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
