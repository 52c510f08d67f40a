package castwell.capture.assembly;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * Assembles the edges of one boot of one board into passages. An edge that comes after its passage
 * was given out amends it: the passage is given out again, with all its edges.
 *
 * <p>Arrival times are the host's monotonic microseconds; they decide how long to wait. The board's
 * ticks alone decide which edges belong together.
 */
public final class Assembler {
  /** How many passages are remembered behind the last one, for edges that are sent again late. */
  private static final int REMEMBERED_PASSAGES = 128;

  private static final long NEVER = Long.MAX_VALUE;
  private static final long SETTLED = Long.MAX_VALUE;

  private final AssemblyTiming timing;
  private final long holeWaitMicros;
  private final BeatLog beats;
  private final TreeMap<Integer, Edge> edges = new TreeMap<>();
  private final TreeMap<Integer, Passage> given = new TreeMap<>();
  private final Holes holes = new Holes();
  private final DroppedSpans dropped;
  private Gates gates;
  private Grouping grouping;

  /** The highest edge number heard of, or -1 while nothing is known of this boot. */
  private int highest = -1;

  /** The first edge whose passage isn't settled; beyond every edge number while all are settled. */
  private long unsettledFrom = SETTLED;

  private long lastArrivalMicros;
  private long nextLookMicros = NEVER;

  public Assembler(AssemblyTiming timing, Gates gates) {
    this.timing = timing;
    this.holeWaitMicros = TimeUnit.NANOSECONDS.toMicros(timing.holeWait().toNanos());
    this.beats = new BeatLog(Math.round(gates.hz()));
    this.dropped = new DroppedSpans(Math.round(timing.quiet().toNanos() * 1e-9 * gates.hz()));
    stand(gates);
  }

  /** Takes in how the gates stand from now on. */
  public void stand(Gates anew) {
    gates = anew;
    grouping = new Grouping(anew.cut(timing.quiet()), anew.hz());
  }

  /** Whether nothing is open, so that the next edge begins an object. */
  public boolean isSettled() {
    return unsettledFrom == SETTLED;
  }

  /** Notes that the host saw this boot begin, so that every edge from 1 on is waited for. */
  public void noteStart() {
    highest = Math.max(highest, 0);
  }

  /**
   * Takes in what the store already holds of this boot; it isn't given out again unless amended.
   */
  public void restore(Collection<Edge> stored, Collection<Passage> passages) {
    for (Edge edge : stored) {
      edges.put(edge.number(), edge);
      highest = Math.max(highest, edge.number());
    }
    for (Passage passage : passages) {
      given.put(passage.firstEdge(), passage);
      passage.lostEdges().forEach(holes::giveUp);
      highest = Math.max(highest, passage.lastEdge());
    }
  }

  public boolean hasEdges() {
    return !edges.isEmpty();
  }

  /** The edge of that number, if it is remembered here. */
  public Optional<Edge> known(int number) {
    return Optional.ofNullable(edges.get(number));
  }

  /**
   * Adds an edge that isn't known yet.
   *
   * @param ticks32 the 32-bit counter when it was stamped, wrapping
   * @param late the most ticks by which the stamp may be late
   * @param micros when the edge arrived
   * @return how many edges before it are newly found missing
   */
  public int addEdge(int number, Gate gate, EdgeKind kind, long ticks32, int late, long micros) {
    int found = edges.isEmpty() && highest < 0 ? 0 : openHoles(number - 1, micros);
    holes.fill(number);
    highest = Math.max(highest, number);
    edges.put(number, new Edge(number, gate, kind, unwrap(number, ticks32), late));
    unsettledFrom = Math.min(unsettledFrom, number);
    lastArrivalMicros = micros;
    nextLookMicros = Math.min(nextLookMicros, micros);
    return found;
  }

  private long unwrap(int number, long ticks32) {
    if (!beats.isEmpty() || edges.isEmpty()) {
      return beats.unwrap(number, ticks32);
    }
    Map.Entry<Integer, Edge> before = edges.floorEntry(number);
    Edge near = (before == null ? edges.firstEntry() : before).getValue();
    return near.ticks() + (int) (ticks32 - near.ticks());
  }

  /**
   * Adds a heartbeat.
   *
   * @param counted the board's highest edge number when the beat was composed
   * @return how many edges are newly found missing
   */
  public int addBeat(int counted, long ticks48, long micros) {
    beats.add(counted, ticks48);
    if (highest < 0) {
      highest = counted;
      return 0;
    }
    int found = openHoles(counted, micros);
    highest = Math.max(highest, counted);
    return found;
  }

  /**
   * Gives up those edges of a range that are still waited for, since the board no longer keeps
   * them.
   */
  public void giveUp(int first, int last) {
    for (int number : holes.waitedFor(first, last)) {
      holes.giveUp(number);
      unsettledFrom = Math.min(unsettledFrom, number);
      nextLookMicros = 0;
    }
  }

  /**
   * Notes that the board had to drop edges, so that passages meanwhile, given out or not, lack
   * some.
   */
  public void noteDropped(long firstTicks32, long lastTicks32) {
    long first = beats.nearest(firstTicks32);
    dropped.add(first, first + Math.floorMod(lastTicks32 - firstTicks32, 1L << 32));
    for (Passage passage : given.descendingMap().values()) {
      if (!passage.edgesDropped() && dropped.overlap(passage)) {
        unsettledFrom = Math.min(unsettledFrom, passage.firstEdge());
        nextLookMicros = 0;
      }
    }
  }

  /**
   * The edge from which on the board should be asked to send again; empty when none is waited for.
   */
  public OptionalInt wanted() {
    return holes.firstWaitedFor();
  }

  /** The tick by which a wholly lost passage was stamped, as far as beats and later edges tell. */
  public OptionalLong stampedBy(Passage lost) {
    OptionalLong counted = beats.alreadyAt(lost.lastEdge());
    var next = edges.higherEntry(lost.lastEdge());
    if (next == null) {
      return counted;
    }
    long ticks = next.getValue().ticks();
    return OptionalLong.of(counted.isPresent() ? Math.min(ticks, counted.getAsLong()) : ticks);
  }

  /** When {@link #settle} has something to do next, in micros; empty when nothing is open. */
  public OptionalLong nextLook() {
    return nextLookMicros == NEVER ? OptionalLong.empty() : OptionalLong.of(nextLookMicros);
  }

  /**
   * Closes what has waited long enough, and returns the passages that closed or changed since the
   * last call.
   */
  public List<Passage> settle(long micros) {
    return micros < nextLookMicros ? List.of() : look(micros, false);
  }

  /**
   * Closes whatever is open, since nothing more of this boot will come.
   *
   * @param boardRestarted whether the board itself started anew
   */
  public List<Passage> close(boolean boardRestarted) {
    return look(NEVER, boardRestarted);
  }

  private int openHoles(int upTo, long micros) {
    if (upTo <= highest) {
      return 0;
    }
    int found = upTo - Math.max(highest, 0);
    int first = upTo - Math.min(found, Holes.MOST_IN_A_ROW) + 1;
    for (int i = 0; i <= upTo - first; i++) {
      holes.open(first + i, micros + holeWaitMicros);
    }
    if (found > 0) {
      unsettledFrom = Math.min(unsettledFrom, first);
      nextLookMicros = Math.min(nextLookMicros, micros + holeWaitMicros);
    }
    return found;
  }

  private List<Passage> look(long micros, boolean boardRestarted) {
    for (int number : holes.expire(micros)) {
      unsettledFrom = Math.min(unsettledFrom, number);
    }
    nextLookMicros = holes.nextGiveUp().orElse(NEVER);
    if (unsettledFrom == SETTLED) {
      return List.of();
    }
    int from = startOfLook();
    var groups = grouping.split(edges.tailMap(from, true).values());
    var candidates = new HoleAssignment(grouping, beats).assign(groups, holes.from(from));
    List<Passage> closed = new ArrayList<>();
    unsettledFrom = SETTLED;
    for (int i = 0; i < candidates.size(); i++) {
      Candidate candidate = candidates.get(i);
      boolean newest =
          candidates.subList(i + 1, candidates.size()).stream().noneMatch(Candidate::hasEdges);
      long closesAt = newest && candidate.hasEdges() ? closesAt(candidate) : 0;
      if (candidate.lost().stream().anyMatch(holes::isWaitedFor)) {
        unsettledFrom = Math.min(unsettledFrom, candidate.first());
      } else if (micros < closesAt) {
        unsettledFrom = Math.min(unsettledFrom, candidate.first());
        nextLookMicros = Math.min(nextLookMicros, closesAt);
      } else {
        boolean cut = boardRestarted && closesAt > 0 && Grouping.lacksEnd(candidate.edges());
        Passage cluster = candidate.toPassage(cut, lacksDropped(candidate));
        gates.separate(cluster).forEach(passage -> giveOut(passage, closed));
      }
    }
    forget();
    return closed;
  }

  /**
   * Whether the board dropped edges meanwhile. A passage once marked stays so, since spans from
   * before a restart of the program aren't remembered here.
   */
  private boolean lacksDropped(Candidate candidate) {
    Passage before = given.get(candidate.first());
    return dropped.overlap(candidate.edges()) || before != null && before.edgesDropped();
  }

  /**
   * The first edge to look at: two passages back, since an edge that came late may join the one
   * before.
   */
  private int startOfLook() {
    int unsettled = (int) Math.min(unsettledFrom, Integer.MAX_VALUE);
    Integer start = given.lowerKey(unsettled);
    Integer before = start == null ? null : given.lowerKey(start);
    return withItsCluster(before != null ? before : start != null ? start : unsettled);
  }

  /** The first edge of those passages whose edges lie among one another. */
  private int withItsCluster(int first) {
    int from = first;
    var before = given.lowerEntry(from);
    while (before != null && before.getValue().lastEdge() > from) {
      from = before.getKey();
      before = given.lowerEntry(from);
    }
    return from;
  }

  private long closesAt(Candidate candidate) {
    return lastArrivalMicros + Math.round(grouping.patienceS(candidate.edges()) * 1e6);
  }

  private void giveOut(Passage passage, List<Passage> closed) {
    Passage before = given.get(passage.firstEdge());
    boolean sameEdges =
        before != null
            && before.edges().equals(passage.edges())
            && before.lostEdges().equals(passage.lostEdges())
            && before.edgesDropped() == passage.edgesDropped();
    if (!sameEdges) {
      given
          .subMap(passage.firstEdge(), true, passage.lastEdge(), true)
          .keySet()
          .removeAll(passage.numbers());
      given.put(passage.firstEdge(), passage);
      closed.add(passage);
    }
  }

  private void forget() {
    if (given.size() > 2 * REMEMBERED_PASSAGES) {
      int oldest =
          given.descendingKeySet().stream().skip(REMEMBERED_PASSAGES).findFirst().orElseThrow();
      int boundary = Math.min(oldest, startOfLook());
      edges.headMap(boundary).clear();
      given.headMap(boundary).clear();
      holes.forgetBefore(boundary);
    }
  }
}
