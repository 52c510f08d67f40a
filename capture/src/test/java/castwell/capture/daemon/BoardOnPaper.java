package castwell.capture.daemon;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.daemon.PaperWire.Fate;
import java.util.Random;

/** What a board would say whose true clock is known beside its own. Times are true seconds. */
final class BoardOnPaper {
  private static final String SENSORS = "812,807,5012,2150,1875,5510";

  /**
   * @param hz the true rate of its counter
   * @param firstTicks of the counter as the recording begins
   * @param mostDelaySeconds by which the host hears a line late
   */
  record Nature(
      String device,
      double hz,
      long firstTicks,
      int firstBoot,
      int firstLine,
      int edgesBefore,
      int latencyANs,
      int latencyBNs,
      double mostDelaySeconds) {}

  private final Nature nature;
  private final Random random;
  private final PaperWire wire;
  private int boot;
  private int edges;
  private int merged;
  private int dropped;
  private double counterZero;
  private double nextBeat = 0.2;
  private double nextIdentity;
  private Fate nextBeatFate = Fate.SENT;
  private Fate nextIdentityFate = Fate.SENT;
  private boolean named;
  private final RateBound rate;
  private char levelA = 'C';
  private char levelB = 'C';

  BoardOnPaper(Nature nature, Random random) {
    this.nature = nature;
    this.random = random;
    this.rate = new RateBound(nature.mostDelaySeconds());
    this.boot = nature.firstBoot();
    this.wire = new PaperWire(nature.firstLine(), nature.mostDelaySeconds(), random);
    this.edges = nature.edgesBefore();
    this.counterZero = -nature.firstTicks() / nature.hz();
  }

  int boot() {
    return boot;
  }

  int edges() {
    return edges;
  }

  /** Whether the host has heard who it is. */
  boolean named() {
    return named;
  }

  void spoilNextBeat(Fate fate) {
    nextBeatFate = fate;
  }

  void spoilNextIdentity(Fate fate) {
    nextIdentityFate = fate;
  }

  /** Lets it say of itself what falls due by then. */
  void liveUntil(double seconds) {
    while (Math.min(nextBeat, nextIdentity) <= seconds) {
      if (nextIdentity <= nextBeat) {
        double now = nextIdentity;
        nextIdentity += 60;
        identity(now, 'P');
      } else {
        double now = nextBeat;
        nextBeat += 1 + 0.016 * random.nextDouble();
        beat(now);
      }
    }
  }

  private void identity(double now, char cause) {
    Fate fate = nextIdentityFate;
    named |= fate == Fate.SENT;
    nextIdentityFate = Fate.SENT;
    wire.say(
        now,
        fate,
        "I",
        "1,paper-1,%s,%d,2000000,2,%d,%d,64,%c"
            .formatted(nature.device(), boot, nature.latencyANs(), nature.latencyBNs(), cause));
  }

  private void beat(double now) {
    Fate fate = nextBeatFate;
    nextBeatFate = Fate.SENT;
    if (fate == Fate.SENT) {
      rate.beat(now);
    }
    long queued = wire.queued(now);
    wire.say(
        now,
        fate,
        "H",
        "%d,%d,%d,%d,%d,%d,%c%c,%s"
            .formatted(boot, ticks(now), queued, edges, merged, dropped, levelA, levelB, SENSORS));
  }

  double rateUncertainty() {
    return rate.uncertainty();
  }

  /** Stamps an edge, late by what the gate is late by construction. */
  void edge(double seconds, Gate gate, EdgeKind kind, int lateTicks, Fate fate) {
    liveUntil(seconds);
    edges++;
    merged += kind == EdgeKind.MERGED ? 1 : 0;
    if (gate == Gate.A) {
      levelA = kind == EdgeKind.CLEAR ? 'C' : 'B';
    } else {
      levelB = kind == EdgeKind.CLEAR ? 'C' : 'B';
    }
    double latency = (gate == Gate.A ? nature.latencyANs() : nature.latencyBNs()) * 1e-9;
    String fields =
        "%d,%d,%s,%c,%d,%d"
            .formatted(
                boot,
                edges,
                gate,
                kind.letter(),
                ticks(seconds + latency) & 0xFFFF_FFFFL,
                lateTicks);
    wire.say(seconds, fate == Fate.TWICE ? Fate.SENT : fate, "E", fields);
    if (fate == Fate.TWICE) {
      wire.say(seconds, Fate.SENT, "E", fields);
    }
  }

  /** A gate chatters and the board tells only how many edges it left out. */
  void loss(double seconds, Gate gate, double since, int count) {
    liveUntil(seconds);
    dropped += count;
    wire.say(
        seconds,
        Fate.SENT,
        "L",
        "%d,%s,%d,%d,%d"
            .formatted(
                boot, gate, ticks(since) & 0xFFFF_FFFFL, ticks(seconds) & 0xFFFF_FFFFL, count));
  }

  /** Its processor starts anew: counters at nothing, the next boot. */
  void restart(double seconds, Fate identityFate) {
    liveUntil(seconds);
    boot = boot + 1 & 0xFFFF;
    wire.restart();
    edges = 0;
    merged = 0;
    dropped = 0;
    levelA = 'C';
    levelB = 'C';
    counterZero = seconds;
    rate.restart();
    nextIdentity = seconds + 60;
    nextBeat = seconds + 0.2;
    nextIdentityFate = identityFate;
    identity(seconds, 'E');
  }

  PaperWire wireAt(double seconds) {
    liveUntil(seconds);
    return wire;
  }

  long ticks(double seconds) {
    return (long) Math.floor((seconds - counterZero) * nature.hz());
  }
}
