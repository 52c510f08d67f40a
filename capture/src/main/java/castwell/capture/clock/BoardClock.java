package castwell.capture.clock;

import castwell.analysis.tickrate.BeatSegment;
import castwell.capture.store.RawFacts.StoredBeat;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One board's counter measured against the host's clock, over boots, links and hours. Each stretch
 * of at most half an hour is measured by itself, so that the rate of a crystal that warms up is
 * followed.
 */
public final class BoardClock {
  private static final double STRETCH_SECONDS = 1800;

  /** The most stretches kept, which bounds memory where a link comes and goes all day. */
  private static final int MOST_STRETCHES = 64;

  private static final int RECENT_BEATS = 8;
  private static final double WIRE_BYTES_PER_SECOND = 115_200 / 10.0;

  private final Map<Stretch, BeatSegment> segments = new LinkedHashMap<>();
  private final Deque<Beat> recent = new ArrayDeque<>();

  private record Stretch(int boot, long listening, long number) {}

  private record Beat(int boot, long listening, long ticks48, double seconds) {}

  /**
   * Adds a beat.
   *
   * @param listening the stretch of listening over which it came
   * @param queued the number of bytes ahead of the beat on the wire
   * @param bytes the number of bytes of the beat's own line
   * @param micros when it arrived, in microseconds of that stretch
   */
  public void add(int boot, long listening, long ticks48, int queued, int bytes, long micros) {
    double seconds = micros * 1e-6 - (queued + bytes) / WIRE_BYTES_PER_SECOND;
    Stretch stretch = new Stretch(boot, listening, (long) Math.floor(seconds / STRETCH_SECONDS));
    segments.computeIfAbsent(stretch, s -> new BeatSegment()).add(ticks48, seconds);
    keepNewest(MOST_STRETCHES);
    recent.addLast(new Beat(boot, listening, ticks48, seconds));
    if (recent.size() > RECENT_BEATS) {
      recent.removeFirst();
    }
  }

  /** Adds a beat that was stored. */
  public void add(StoredBeat beat) {
    add(
        beat.boot(),
        beat.listeningId(),
        beat.ticks48(),
        beat.queued(),
        beat.bytes(),
        beat.receivedUs());
  }

  /** The rate as it is known now. */
  public MeasuredRates measured() {
    return new MeasuredRates(
        segments.values().stream().map(BeatSegment::rate).flatMap(Optional::stream).toList());
  }

  /**
   * When the counter stood at this reading, in microseconds of that stretch of listening; empty
   * without a beat of it.
   */
  public OptionalDouble microsAt(int boot, long listening, long ticks48, double nominalHz) {
    OptionalDouble fitted = OptionalDouble.empty();
    for (var entry : segments.entrySet()) {
      if (entry.getKey().boot() == boot && entry.getKey().listening() == listening) {
        OptionalDouble seconds = entry.getValue().hostSecondsAt(ticks48);
        fitted = seconds.isPresent() ? seconds : fitted;
      }
    }
    if (fitted.isPresent()) {
      return OptionalDouble.of(fitted.getAsDouble() * 1e6);
    }
    // There are too few beats for a rate, but the one that was delayed least still dates best.
    return recent.stream()
        .filter(beat -> beat.boot == boot && beat.listening == listening)
        .mapToDouble(beat -> (beat.seconds + (ticks48 - beat.ticks48) / nominalHz) * 1e6)
        .min();
  }

  /** Keeps this many of the newest stretches and drops the rest. */
  public void keepNewest(int stretches) {
    var keys = segments.keySet().iterator();
    for (int surplus = segments.size() - stretches; surplus > 0; surplus--) {
      keys.next();
      keys.remove();
    }
  }
}
