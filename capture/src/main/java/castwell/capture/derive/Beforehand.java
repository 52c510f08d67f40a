package castwell.capture.derive;

import castwell.analysis.reading.Known;
import castwell.analysis.statistic.Median;
import castwell.analysis.statistic.MedianAbsoluteDeviation;
import castwell.capture.station.ClosedPassage;
import castwell.capture.store.Conditions.SessionTold;
import castwell.capture.store.Conditions.Strays;
import castwell.capture.store.Conditions.Tagged;
import castwell.capture.store.Rack;
import castwell.capture.store.Shots;
import castwell.capture.store.Tags;
import castwell.capture.store.Transaction;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the shots before a passage tell of it, before its edges are read. */
final class Beforehand {
  /** From so many shots on, a bow and an arrow have a usual speed. */
  private static final int FEWEST = 5;

  private static final int MOST_LOOKED_AT = 40;

  /** From the median absolute deviation to the standard deviation of a normal distribution. */
  private static final double NORMAL = 1.4826;

  /** What was shot longer ago doesn't tell of today's speed. */
  private static final Duration TODAY = Duration.ofHours(2);

  private Beforehand() {}

  /** What the tags tell of a passage. */
  static Tagged tagged(Transaction t, String station, Instant fired, Tags.Pair tags) {
    return new Tagged(lengthM(t, tags), cellSpeed(t, station, fired, tags));
  }

  /** The length in metres of the arrow that the tags name; empty where it isn't known. */
  static OptionalDouble lengthM(Transaction t, Tags.Pair tags) {
    return tags.arrowId().isEmpty()
        ? OptionalDouble.empty()
        : t.rack()
            .arrowById(tags.arrowId().getAsLong())
            .map(Rack.Arrow::lengthM)
            .orElse(OptionalDouble.empty());
  }

  /** The speed in m/s that this bow and arrow had shortly before, and how it scatters. */
  private static Optional<Known> cellSpeed(
      Transaction t, String station, Instant fired, Tags.Pair tags) {
    if (tags.bowId().isEmpty() || tags.arrowId().isEmpty()) {
      return Optional.empty();
    }
    List<Double> speeds =
        t.shots().known(station, fired, MOST_LOOKED_AT).stream()
            .filter(shot -> shot.fired().isAfter(fired.minus(TODAY)))
            .filter(shot -> shot.bowId() == tags.bowId().getAsLong())
            .filter(shot -> shot.arrowId() == tags.arrowId().getAsLong())
            .map(Shots.Known::speedMps)
            .toList();
    return speeds.size() < FEWEST ? Optional.empty() : Optional.of(usual(speeds));
  }

  private static Known usual(List<Double> speeds) {
    double[] mps = speeds.stream().mapToDouble(Double::doubleValue).toArray();
    return new Known(Median.of(mps), NORMAL * MedianAbsoluteDeviation.of(mps));
  }

  /** What the session that goes on tells of the gates that this board stands at. */
  static SessionTold gates(Transaction t, ClosedPassage closed) {
    return t.sessions()
        .goingOn(closed.station(), closed.fired())
        .flatMap(session -> t.boardFigures(session, closed.board().id()).newestTold())
        .orElse(SessionTold.UNKNOWN);
  }

  /** How often the gates were blocked in the second before by something that was no arrow. */
  static Strays strays(Transaction t, ClosedPassage closed) {
    long oneSecond = closed.timing().hz();
    return t.figures()
        .straysBefore(
            closed.board().id(),
            closed.boot(),
            closed.passage().firstEdge(),
            closed.firstTicks() - oneSecond);
  }
}
