package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.US_ASCII;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.device.RecordedLine;
import castwell.capture.wire.Crc16;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;

/**
 * A board with a true clock beside its own, a wire at 115200 baud and a host that hears each line a
 * little late: what it says, as a recording would hold it. Times are true seconds since the
 * recording began.
 */
final class BoardOnPaper {
  private static final double BYTES_PER_SECOND = 115_200 / 10.0;
  private static final String SENSORS = "812,807,5012,2150,1875,5510";

  /** How a line fares between board and host. */
  enum Fate {
    SENT,
    LOST,
    CORRUPTED,
    TWICE
  }

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
  private final List<RecordedLine> lines = new ArrayList<>();
  private int boot;
  private int line;
  private int edges;
  private int merged;
  private int dropped;
  private double counterZero;
  private double wireFree;
  private double lastHeard;
  private double nextBeat = 0.2;
  private double nextIdentity;
  private Fate nextBeatFate = Fate.SENT;
  private Fate nextIdentityFate = Fate.SENT;
  private boolean named;
  private int beatsOfBoot;
  private double firstBeatOfBoot;
  private double rateUncertainty = Double.POSITIVE_INFINITY;
  private char levelA = 'C';
  private char levelB = 'C';

  BoardOnPaper(Nature nature, Random random) {
    this.nature = nature;
    this.random = random;
    this.boot = nature.firstBoot();
    this.line = nature.firstLine();
    this.edges = nature.edgesBefore();
    this.counterZero = -nature.firstTicks() / nature.hz();
  }

  List<RecordedLine> lines() {
    return lines;
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
    say(
        now,
        fate,
        "I",
        "1,paper-1,%s,%d,2000000,2,%d,%d,64,%c"
            .formatted(nature.device(), boot, nature.latencyANs(), nature.latencyBNs(), cause));
  }

  private void beat(double now) {
    Fate fate = nextBeatFate;
    nextBeatFate = Fate.SENT;
    rememberForRate(now, fate);
    long queued = Math.round(Math.max(0, wireFree - now) * BYTES_PER_SECOND);
    say(
        now,
        fate,
        "H",
        "%d,%d,%d,%d,%d,%d,%c%c,%s"
            .formatted(boot, ticks(now), queued, edges, merged, dropped, levelA, levelB, SENSORS));
  }

  private void rememberForRate(double now, Fate fate) {
    if (fate != Fate.SENT) {
      return;
    }
    firstBeatOfBoot = beatsOfBoot == 0 ? now : firstBeatOfBoot;
    beatsOfBoot++;
    if (beatsOfBoot >= 8) {
      double u = 45 * nature.mostDelaySeconds() / (beatsOfBoot * (now - firstBeatOfBoot));
      rateUncertainty = Math.min(rateUncertainty, u);
    }
  }

  /**
   * How well its rate can be told from its heartbeats, relative: the lower edge of N points over a
   * time T, each late by up to D, tilts by 3 D / (N T) mostly, and by 45 D / (N T) once in
   * thousands, as a simulation of uniform delays says.
   */
  double rateUncertainty() {
    return rateUncertainty;
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
    say(seconds, fate == Fate.TWICE ? Fate.SENT : fate, "E", fields);
    if (fate == Fate.TWICE) {
      say(seconds, Fate.SENT, "E", fields);
    }
  }

  /** A gate chatters and the board tells only how many edges it left out. */
  void loss(double seconds, Gate gate, double since, int count) {
    liveUntil(seconds);
    dropped += count;
    say(
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
    line = 0;
    edges = 0;
    merged = 0;
    dropped = 0;
    levelA = 'C';
    levelB = 'C';
    counterZero = seconds;
    beatsOfBoot = 0;
    nextIdentity = seconds + 60;
    nextBeat = seconds + 0.2;
    nextIdentityFate = identityFate;
    identity(seconds, 'E');
  }

  /** A sentence of a type that no version 1 host knows. */
  void unknownSentence(double seconds) {
    liveUntil(seconds);
    say(seconds, Fate.SENT, "Z", "1,2,3");
  }

  /** The wire takes nothing more for so long; what the board says meanwhile waits in its queue. */
  void holdUpWire(double seconds, double howLong) {
    liveUntil(seconds);
    wireFree = Math.max(wireFree, seconds + howLong);
  }

  /** The host is busy and hears nothing for so long; then all at once. */
  void keepHostBusy(double seconds, double howLong) {
    liveUntil(seconds);
    lastHeard = Math.max(lastHeard, seconds + howLong);
  }

  /** Bytes that no board says; they are a line of their own. */
  void noise(double seconds, byte[] bytes) {
    liveUntil(seconds);
    hear(seconds, bytes);
  }

  long ticks(double seconds) {
    return (long) Math.floor((seconds - counterZero) * nature.hz());
  }

  private void say(double now, Fate fate, String type, String fields) {
    String body = type + "," + line + "," + fields;
    line = line + 1 & 0xFFFF;
    byte[] bytes = body.getBytes(US_ASCII);
    byte[] sentence =
        ("$" + body + String.format(Locale.ROOT, "*%04X", Crc16.of(bytes, 0, bytes.length)))
            .getBytes(US_ASCII);
    if (fate == Fate.CORRUPTED) {
      spoil(sentence);
    }
    if (fate != Fate.LOST) {
      hear(now, sentence);
    }
  }

  /** Changes up to three bytes between the dollar and the star, mostly to other digits. */
  private void spoil(byte[] sentence) {
    byte[] before = sentence.clone();
    while (Arrays.equals(sentence, before)) {
      for (int i = random.nextInt(3); i >= 0; i--) {
        sentence[1 + random.nextInt(sentence.length - 6)] =
            (byte) (random.nextInt(4) > 0 ? '0' + random.nextInt(10) : 0x20 + random.nextInt(95));
      }
    }
  }

  private void hear(double now, byte[] bytes) {
    wireFree = Math.max(wireFree, now) + (bytes.length + 2) / BYTES_PER_SECOND;
    double heard = wireFree + nature.mostDelaySeconds() * random.nextDouble();
    lastHeard = Math.max(lastHeard, heard);
    lines.add(new RecordedLine(Math.round(lastHeard * 1e6), bytes));
  }

  /** The recording's text below its header. */
  String text() {
    return lines.stream().map(l -> l + "\n").collect(Collectors.joining());
  }
}
