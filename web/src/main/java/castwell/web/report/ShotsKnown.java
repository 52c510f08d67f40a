package castwell.web.report;

import castwell.analysis.misfit.Expected;
import castwell.analysis.misfit.Expected.Sample;
import castwell.analysis.misfit.Misfit.Candidate;
import castwell.analysis.statistic.Mean;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** The earlier shots that tell what to expect of a bow, as it is then, with an arrow. */
public final class ShotsKnown {
  private static final int ENOUGH = 5;

  /** What another day may shift: 1 % of wood's moisture, or 20 F (common practice). */
  private static final double OTHER_DAY = 0.01;

  private final String session;
  private final List<Shot> counting;

  /** A bow in one state, with an arrow. */
  public record What(BowState bow, Rack.Arrow arrow) {
    static Optional<What> of(Shot shot) {
      return shot.bow().flatMap(bow -> shot.arrow().map(arrow -> new What(bow, arrow)));
    }

    String words() {
      return bow.bow() + " with " + arrow.name();
    }
  }

  private ShotsKnown(String session, List<Shot> counting) {
    this.session = session;
    this.counting = counting;
  }

  static ShotsKnown before(Transaction t, Shot shot, List<Shot> earlier) {
    Map<Long, Optional<Instant>> states = new HashMap<>();
    return new ShotsKnown(
        shot.session(),
        earlier.stream()
            .filter(e -> e.fired().isBefore(shot.fired()))
            .filter(e -> e.counts() && e.byGates().isPresent())
            .filter(e -> e.figure().speedMps().isPresent() && e.arrow().isPresent())
            .filter(e -> e.bow().filter(bow -> isAsThen(t, bow, shot.fired(), states)).isPresent())
            .toList());
  }

  private static boolean isAsThen(
      Transaction t, BowState bow, Instant then, Map<Long, Optional<Instant>> states) {
    return states
        .computeIfAbsent(bow.bowId(), id -> t.rack().state(id, then).map(BowState::since))
        .filter(bow.since()::equals)
        .isPresent();
  }

  List<Candidate<What>> candidates() {
    Map<What, Expected> speeds =
        expected(counting, s -> What.of(s).orElseThrow(), s -> s.figure().speedMps().orElseThrow());
    Map<Long, Expected> lengths =
        expected(
            counting.stream().filter(s -> s.figure().lengthM().isPresent()).toList(),
            s -> s.arrow().orElseThrow().id(),
            s -> s.figure().lengthM().orElseThrow());
    List<Candidate<What>> candidates = new ArrayList<>();
    speeds.forEach(
        (what, speed) ->
            candidates.add(
                new Candidate<>(what, speed, Optional.ofNullable(lengths.get(what.arrow().id())))));
    return candidates;
  }

  private <K> Map<K, Expected> expected(
      List<Shot> shots, Function<Shot, K> name, ToDoubleFunction<Shot> value) {
    Map<K, List<Shot>> groups = new LinkedHashMap<>();
    shots.forEach(s -> groups.computeIfAbsent(name.apply(s), k -> new ArrayList<>()).add(s));
    Map<K, Sample> samples = new LinkedHashMap<>();
    groups.forEach((k, group) -> sample(group, value).ifPresent(s -> samples.put(k, s)));
    List<Expected> expected = Expected.of(List.copyOf(samples.values()));
    Map<K, Expected> named = new LinkedHashMap<>();
    List<K> names = List.copyOf(samples.keySet());
    for (int i = 0; i < expected.size(); i++) {
      named.put(names.get(i), expected.get(i));
    }
    return named;
  }

  /** Those of the same session where they are enough, else all. */
  private Optional<Sample> sample(List<Shot> shots, ToDoubleFunction<Shot> value) {
    double[] today =
        shots.stream().filter(shot -> shot.session().equals(session)).mapToDouble(value).toArray();
    if (today.length >= ENOUGH) {
      return Optional.of(new Sample(today, 0));
    }
    double[] all = shots.stream().mapToDouble(value).toArray();
    return all.length >= ENOUGH
        ? Optional.of(new Sample(all, OTHER_DAY * Mean.of(all)))
        : Optional.empty();
  }
}
