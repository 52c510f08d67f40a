package castwell.capture.assembly;

import castwell.analysis.shot.Passage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Random;
import java.util.Set;

/** The way from a board to its host: in order, up to 40 ms late, and lines get lost. */
final class RandomWire {
  private static final int KEEP = 64;
  private static final long ASK_AGAIN_MICROS = 150_000;

  private final Random random;
  private final List<Stamp> stamps;
  private final Set<Integer> lost;
  private final boolean answers;
  private final Host host = new Host().sawItStart();
  private final PriorityQueue<Arrival> arrivals =
      new PriorityQueue<>(Comparator.comparingLong(Arrival::micros));
  private final Set<Integer> heardOf = new HashSet<>();
  private int askedFrom;
  private long askedMicros;
  private long lineFreeMicros;

  private record Arrival(long micros, Runnable what) {}

  /**
   * @param stamps in the order stamped
   * @param lost edges whose lines never arrive
   * @param answers whether it sends edges again; then each may get lost once
   */
  RandomWire(Random random, List<Stamp> stamps, Set<Integer> lost, boolean answers) {
    this.random = random;
    this.stamps = stamps;
    this.lost = lost;
    this.answers = answers;
  }

  /** The shots that come of it. */
  List<Passage> shots(double endSeconds) {
    List<Arrival> said = new ArrayList<>();
    for (Stamp stamp : stamps) {
      said.add(new Arrival(stamp.micros(), () -> hear(stamp)));
    }
    for (double at = 0.2; at < endSeconds; at += 1 + 0.016 * random.nextDouble()) {
      double seconds = at;
      said.add(new Arrival(Host.micros(at), () -> beat(seconds)));
    }
    said.sort(Comparator.comparingLong(Arrival::micros));
    for (Arrival line : said) {
      arrive(line.micros(), line.what());
    }
    while (!arrivals.isEmpty()) {
      Arrival next = arrivals.poll();
      host.advance(next.micros());
      next.what().run();
      ask(next.micros());
    }
    return host.until(endSeconds + 1).shots();
  }

  /** No line overtakes another. */
  private void arrive(long saidMicros, Runnable what) {
    long late = random.nextInt(10) == 0 ? random.nextInt(40_000) : random.nextInt(3_000);
    lineFreeMicros = Math.max(lineFreeMicros, saidMicros + late);
    arrivals.add(new Arrival(lineFreeMicros, what));
  }

  private void hear(Stamp stamp) {
    boolean gone = answers ? losesOnce(stamp) : lost.contains(stamp.number());
    if (!gone) {
      host.hear(stamp, now());
    }
  }

  private boolean losesOnce(Stamp stamp) {
    return heardOf.add(stamp.number()) && random.nextInt(8) == 0;
  }

  private void beat(double seconds) {
    int counted = (int) stamps.stream().filter(s -> s.micros() <= seconds * 1e6).count();
    host.beatLate(seconds, counted, now());
  }

  private long now() {
    return host.now();
  }

  private void ask(long micros) {
    var wanted = host.wanted();
    boolean again = micros - askedMicros >= ASK_AGAIN_MICROS;
    if (answers && wanted.isPresent() && (wanted.getAsInt() != askedFrom || again)) {
      askedFrom = wanted.getAsInt();
      askedMicros = micros;
      long answered = micros + 5_000 + random.nextInt(100_000);
      int stamped = (int) stamps.stream().filter(s -> s.micros() <= answered).count();
      int from = Math.max(askedFrom, stamped - KEEP + 1);
      for (Stamp stamp : stamps.subList(from - 1, stamped)) {
        arrivals.add(new Arrival(answered + stamp.number() - from, () -> hear(stamp)));
      }
    }
  }
}
