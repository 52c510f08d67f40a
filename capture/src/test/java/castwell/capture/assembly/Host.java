package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.shot.Passage;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * An assembler with a clock that a test sets, and the shots that its passages make: a passage that
 * shares an edge number with a shot amends it.
 */
final class Host {
  /** A line's way from the board to here. */
  static final long DELAY_MICROS = 2_000;

  final Assembler assembler;

  /** No passage reaches back over more edges. */
  private static final int MOST_EDGES = 512;

  private final List<Passage> given = new ArrayList<>();
  private final TreeMap<Integer, Passage> shots = new TreeMap<>();
  private long now;

  Host() {
    this(AssemblyTiming.defaults());
  }

  Host(AssemblyTiming timing) {
    assembler = new Assembler(timing, PretendGates.GATES);
  }

  Host sawItStart() {
    assembler.noteStart();
    return this;
  }

  /** Edges at once on their way. */
  Host hear(Collection<Stamp> stamps) {
    stamps.forEach(stamp -> hear(stamp, stamp.micros() + DELAY_MICROS));
    return this;
  }

  Host hear(Stamp stamp, long micros) {
    advance(micros);
    if (assembler.known(stamp.number()).isEmpty()) {
      assembler.addEdge(
          stamp.number(), stamp.gate(), stamp.kind(), stamp.ticks() & 0xFFFF_FFFFL, 0, micros);
    }
    advance(micros);
    return this;
  }

  Host hearAt(double seconds, Collection<Stamp> stamps) {
    stamps.forEach(stamp -> hear(stamp, micros(seconds)));
    return this;
  }

  Host beat(double seconds, int counted) {
    return beatLate(seconds, counted, micros(seconds));
  }

  /** A beat composed at a second that arrives later. */
  Host beatLate(double composedSeconds, int counted, long micros) {
    advance(micros);
    assembler.addBeat(counted, Math.round(composedSeconds * PretendGates.HZ), micros);
    advance(micros);
    return this;
  }

  Host missing(double seconds, int first, int last) {
    advance(micros(seconds));
    assembler.giveUp(first, last);
    advance(now);
    return this;
  }

  Host until(double seconds) {
    advance(micros(seconds));
    return this;
  }

  Host close(boolean boardRestarted) {
    take(assembler.close(boardRestarted));
    return this;
  }

  long now() {
    return now;
  }

  OptionalInt wanted() {
    return assembler.wanted();
  }

  /** What was given out so far, amendments included. */
  List<Passage> given() {
    return given;
  }

  /** The shots as they stand, by edge number. */
  List<Passage> shots() {
    return List.copyOf(shots.values());
  }

  void advance(long micros) {
    assertThat(micros).as("the clock runs forward").isGreaterThanOrEqualTo(now);
    OptionalLong look = assembler.nextLook();
    while (look.isPresent() && look.getAsLong() <= micros) {
      now = Math.max(now, look.getAsLong());
      take(assembler.settle(now));
      look = assembler.nextLook();
      assertThat(look.orElse(Long.MAX_VALUE)).as("else it would spin").isGreaterThan(now);
    }
    now = micros;
  }

  private void take(List<Passage> passages) {
    for (Passage passage : passages) {
      given.add(passage);
      shots
          .subMap(passage.firstEdge() - MOST_EDGES, true, passage.lastEdge(), true)
          .values()
          .removeIf(shot -> !Collections.disjoint(shot.numbers(), passage.numbers()));
      shots.put(passage.firstEdge(), passage);
    }
  }

  static long micros(double seconds) {
    return Math.round(seconds * 1e6);
  }
}
