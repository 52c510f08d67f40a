package castwell.analysis.tickrate;

import castwell.analysis.speed.TickRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The board's counter against the host's clock over one unbroken run of heartbeats.
 *
 * <p>A beat can only arrive late, never early, so the truth lies along the lower edge of the points
 * (ticks, host seconds): of all lines with no point below them, the one with the least mean
 * distance to them. That line runs along the edge of the lower convex hull that lies under the mean
 * of the ticks, so the hull and two sums are all that is kept.
 *
 * <p>The rate is taken as constant. Begin a new segment every ten minutes or so: a rate that drifts
 * then shows as scatter between segments, for which {@link TickRates} widens the uncertainty.
 */
public final class BeatSegment {
  private static final int FEWEST_BEATS = 8;
  private static final double SHORTEST_SPAN_SECONDS = 5;

  /**
   * The most corners kept. Noise leaves a few dozen; only a rate that drifts steadily for days
   * makes more.
   */
  private static final int MOST_CORNERS = 1024;

  /**
   * The precision to which a host dates bytes, so that beats without any jitter don't make a clock
   * perfect.
   */
  private static final double HOST_STAMP_SECONDS = 1e-6;

  /**
   * The factor that makes twice the standard uncertainty cover at least 95 % of the errors, for
   * uniform, exponential and stalling delays and 8 to 500 beats. It was found by simulation, which
   * a test repeats.
   */
  private static final double COVERAGE_SCALE = 8;

  private final List<Beat> corners = new ArrayList<>();
  private long beats;
  private long firstTicks;
  private double firstHostSeconds;
  private double sumTicks;
  private double sumSeconds;
  private Beat last = new Beat(-1, 0);

  /** One heartbeat: the board's ticks and the host's seconds since the first beat. */
  private record Beat(double ticks, double seconds) {}

  private record Line(double secondsAtFirst, double secondsPerTick) {
    double seconds(double ticks) {
      return secondsAtFirst + secondsPerTick * ticks;
    }
  }

  /**
   * Takes one heartbeat in. A beat whose counter isn't above that of the last one tells nothing and
   * is passed over.
   *
   * @param ticks48 the board's counter when it composed the beat
   * @param hostSeconds the host's monotonic clock at its arrival, less the time that the line and
   *     the bytes queued ahead of it took on the wire
   */
  public void add(long ticks48, double hostSeconds) {
    if (beats == 0) {
      firstTicks = ticks48;
      firstHostSeconds = hostSeconds;
    }
    Beat beat = new Beat(ticks48 - firstTicks, hostSeconds - firstHostSeconds);
    if (beat.ticks <= last.ticks) {
      return;
    }
    beats++;
    sumTicks += beat.ticks;
    sumSeconds += beat.seconds;
    last = beat;
    while (corners.size() >= 2 && !turnsUp(corner(2), corner(1), beat)) {
      corners.remove(corners.size() - 1);
    }
    corners.add(beat);
    if (corners.size() > MOST_CORNERS) {
      thin();
    }
  }

  /** The measured rate; empty below 8 beats or 5 seconds. */
  public Optional<TickRate> rate() {
    return line().map(this::rate);
  }

  /**
   * When the board's counter stood at this reading, by the clock that {@link #add} is given; empty
   * as long as the rate is.
   */
  public OptionalDouble hostSecondsAt(long ticks48) {
    return line().stream()
        .mapToDouble(line -> firstHostSeconds + line.seconds(ticks48 - firstTicks))
        .findFirst();
  }

  private TickRate rate(Line line) {
    double sumOfDelays = sumSeconds - beats * line.seconds(sumTicks / beats);
    // The line goes through two of the beats, so two of the delays are 0.
    double meanDelay = Math.max(sumOfDelays, 0) / (beats - 2) + HOST_STAMP_SECONDS;
    return new TickRate(
        1 / line.secondsPerTick, COVERAGE_SCALE * 2 * meanDelay / (beats * last.seconds));
  }

  private Optional<Line> line() {
    if (beats < FEWEST_BEATS || last.seconds < SHORTEST_SPAN_SECONDS) {
      return Optional.empty();
    }
    int end = 1;
    while (corners.get(end).ticks < sumTicks / beats) {
      end++;
    }
    Beat from = corners.get(end - 1);
    Beat to = corners.get(end);
    double slope = (to.seconds - from.seconds) / (to.ticks - from.ticks);
    return slope > 0
        ? Optional.of(new Line(from.seconds - slope * from.ticks, slope))
        : Optional.empty();
  }

  private Beat corner(int fromEnd) {
    return corners.get(corners.size() - fromEnd);
  }

  private static boolean turnsUp(Beat a, Beat b, Beat c) {
    return (b.ticks - a.ticks) * (c.seconds - a.seconds)
        > (b.seconds - a.seconds) * (c.ticks - a.ticks);
  }

  /**
   * Drops every second corner but the ends, so that the hull keeps its shape at half the detail.
   */
  private void thin() {
    List<Beat> kept = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      if (i % 2 == 0 || i == corners.size() - 1) {
        kept.add(corners.get(i));
      }
    }
    corners.clear();
    corners.addAll(kept);
  }
}
