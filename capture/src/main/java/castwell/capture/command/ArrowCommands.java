package castwell.capture.command;

import castwell.capture.announce.AnnouncedStore;
import castwell.capture.command.Refused.Why;
import castwell.capture.derive.Derivation;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Feed;
import castwell.capture.store.Passages;
import castwell.capture.store.Rack;
import castwell.capture.store.Transaction;
import castwell.capture.store.Weighings;
import castwell.capture.store.Weighings.Weighing;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** What a person can do with arrows. Each command is committed before anyone is told of it. */
public final class ArrowCommands {
  private final AnnouncedStore store;
  private final Derivation derivation;
  private final Clock clock;

  ArrowCommands(AnnouncedStore store, Derivation derivation, Clock clock) {
    this.store = store;
    this.derivation = derivation;
    this.clock = clock;
  }

  public void add(String name, double massKg, Measures<ArrowMeasure> measures) {
    String checked = Checks.name("refused.what_arrow", name);
    store.writing(
        t -> {
          if (t.rack().arrow(checked).isPresent()) {
            throw Refused.of(Why.CONFLICT, "refused.arrow_taken", checked);
          }
          enter(t, checked, massKg, measures);
        });
  }

  /**
   * Enters an arrow as measured anew. The new values hold for all of its shots, earlier ones too.
   */
  public void enter(String name, double massKg, Measures<ArrowMeasure> measures) {
    store.writing(t -> enter(t, arrow(t, name).name(), massKg, measures));
  }

  /**
   * Enters an arrow within a transaction, adding it if there is none of that name. Another mass
   * than it had sets its weighings aside.
   */
  public void enter(Transaction t, String name, double massKg, Measures<ArrowMeasure> measures) {
    Optional<Rack.Named> known = t.rack().arrow(name);
    known
        .flatMap(arrow -> t.rack().arrowById(arrow.id()))
        .filter(arrow -> !Alike.are(arrow.massKg(), massKg))
        .ifPresent(arrow -> setWeighingsAside(t, arrow.id()));
    long id =
        known
            .map(Rack.Named::id)
            .orElseGet(
                () -> t.rack().addArrow(Checks.name("refused.what_arrow", name), clock.instant()));
    measure(t, id, massKg, measures);
  }

  private void setWeighingsAside(Transaction t, long arrowId) {
    t.weighings().of(arrowId).stream()
        .filter(Weighing::counts)
        .forEach(
            weighing ->
                t.weighings()
                    .decide(weighing.id(), true, "a mass was entered", clock.instant(), "rule"));
  }

  private void measure(Transaction t, long id, double massKg, Measures<ArrowMeasure> measures) {
    t.rack()
        .enterArrow(
            id,
            Checks.arrowMassKg(massKg),
            Checks.measures(ArrowMeasure.values(), measures),
            clock.instant());
    List<Passages.Row> shots = t.passages().ofArrow(id);
    if (!shots.isEmpty()) {
      shots.forEach(row -> derivation.deriveAgain(t, row));
      t.feed().add(Feed.Kind.REFRESH, "", OptionalLong.empty());
    }
    t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
  }

  /** Takes an arrow out of use or back into use. Nothing of it is lost. */
  public void retire(String name, boolean retired, String by) {
    store.writing(
        t -> {
          t.retirements().arrow(arrow(t, name).id(), retired, clock.instant(), by);
          t.feed().add(Feed.Kind.RACK, "", OptionalLong.empty());
        });
  }

  /** Adds a weighing: the arrow's mass is now the mean of its weighings. */
  public void weigh(String name, double massKg, String by) {
    double checked = Checks.arrowMassKg(massKg);
    store.writing(
        t -> {
          long id = arrow(t, name).id();
          t.weighings().add(id, checked, clock.instant(), by);
          takeMean(t, id);
        });
  }

  /** Sets a weighing aside or lets it count again. When none counts, the mass stays as it is. */
  public void decideWeighing(String name, long weighing, boolean setAside, String why, String by) {
    String reason = Checks.words("refused.what_reason", Optional.of(why)).orElse("");
    store.writing(
        t -> {
          long id = arrow(t, name).id();
          if (t.weighings().of(id).stream().noneMatch(one -> one.id() == weighing)) {
            throw Refused.of(Why.NOT_FOUND, "refused.no_weighing", weighing, name);
          }
          t.weighings().decide(weighing, setAside, reason, clock.instant(), by);
          takeMean(t, id);
        });
  }

  private void takeMean(Transaction t, long arrowId) {
    Rack.Arrow arrow = t.rack().arrowById(arrowId).orElseThrow();
    double mean =
        Arrays.stream(Weighings.massesKg(t.weighings().of(arrowId)))
            .average()
            .orElse(arrow.massKg());
    measure(t, arrowId, mean, arrow.measures());
  }

  public static Rack.Named arrow(Transaction t, String name) {
    return t.rack()
        .arrow(name)
        .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_arrow", name));
  }
}
