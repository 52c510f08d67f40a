package castwell.capture.misfit;

import castwell.analysis.misfit.Expected;
import castwell.analysis.misfit.Expected.Sample;
import castwell.analysis.misfit.Misfit.Candidate;
import castwell.analysis.statistic.Mean;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shots.Known;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** What the shots before a moment tell about each bow, as it is at that moment, with each arrow. */
final class ShotsKnown {
  private static final int ENOUGH = 5;

  private final long sessionId;
  private final List<Known> shots;
  private final double otherDay;

  /** A bow and an arrow, by their row numbers. */
  record BowAndArrow(long bowId, long arrowId) {}

  private ShotsKnown(long sessionId, List<Known> shots, double otherDay) {
    this.sessionId = sessionId;
    this.otherDay = otherDay;
    this.shots = shots;
  }

  /**
   * @param states the states of every bow that there are shots of, by its row number
   * @param sessionId the session whose own shots are preferred, since the others were shot on other
   *     days
   * @param otherDay how far another day may shift a bow's speed, relatively
   */
  static ShotsKnown before(
      Instant then,
      long sessionId,
      List<Known> all,
      Map<Long, List<BowState>> states,
      double otherDay) {
    return new ShotsKnown(
        sessionId,
        all.stream()
            .filter(shot -> shot.fired().isBefore(then))
            .filter(shot -> isAsThen(states.get(shot.bowId()), shot.fired(), then))
            .toList(),
        otherDay);
  }

  /**
   * Whether nothing was done to the bow in between. A shot from before the first state counts to
   * that one.
   */
  private static boolean isAsThen(List<BowState> states, Instant fired, Instant then) {
    return states.stream()
        .skip(1)
        .noneMatch(state -> state.since().isAfter(fired) && !state.since().isAfter(then));
  }

  List<Candidate<BowAndArrow>> candidates() {
    Map<BowAndArrow, Expected> speeds =
        expected(shots, shot -> new BowAndArrow(shot.bowId(), shot.arrowId()), Known::speedMps);
    Map<Long, Expected> lengths =
        expected(
            shots.stream().filter(shot -> shot.lengthM().isPresent()).toList(),
            Known::arrowId,
            shot -> shot.lengthM().orElseThrow());
    List<Candidate<BowAndArrow>> candidates = new ArrayList<>();
    speeds.forEach(
        (what, speed) ->
            candidates.add(
                new Candidate<>(what, speed, Optional.ofNullable(lengths.get(what.arrowId())))));
    return candidates;
  }

  private <K> Map<K, Expected> expected(
      List<Known> shots, Function<Known, K> name, ToDoubleFunction<Known> value) {
    Map<K, List<Known>> groups = new LinkedHashMap<>();
    shots.forEach(
        shot -> groups.computeIfAbsent(name.apply(shot), k -> new ArrayList<>()).add(shot));
    List<K> names = new ArrayList<>();
    List<Sample> samples = new ArrayList<>();
    groups.forEach(
        (key, group) ->
            sample(group, value)
                .ifPresent(
                    sample -> {
                      names.add(key);
                      samples.add(sample);
                    }));
    List<Expected> expected = Expected.of(samples);
    Map<K, Expected> named = new LinkedHashMap<>();
    for (int i = 0; i < expected.size(); i++) {
      named.put(names.get(i), expected.get(i));
    }
    return named;
  }

  /** A sample from the shots of the same session where they are enough, else from all. */
  private Optional<Sample> sample(List<Known> shots, ToDoubleFunction<Known> value) {
    double[] today =
        shots.stream().filter(shot -> shot.sessionId() == sessionId).mapToDouble(value).toArray();
    if (today.length >= ENOUGH) {
      return Optional.of(new Sample(today, 0));
    }
    double[] all = shots.stream().mapToDouble(value).toArray();
    return all.length >= ENOUGH
        ? Optional.of(new Sample(all, otherDay * Mean.of(all)))
        : Optional.empty();
  }
}
