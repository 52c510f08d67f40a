package castwell.capture.rehearsal;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.rehearsal.Happening.Beam;
import castwell.capture.rehearsal.Happening.Fate;
import castwell.capture.rehearsal.Happening.Noise;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Random;

/** A pretended gate board, which stamps what happens at its gates and reports it on the wire. */
final class PretendBoard {
  private static final int HZ = 2_000_000;
  private static final double IDENTITY_EVERY_MICROS = 60e6;
  private static final double BEAT_EVERY_MICROS = 1e6;
  private static final double MOST_DITHER_MICROS = 16e3;
  private static final int MOST_LATE_TICKS = 20;

  private final RehearsalSettings settings;
  private final double startMicros;
  private final Random random;
  private final PretendCounter counter;
  private final PretendWire wire;
  private final PretendSensors sensors;
  private final PriorityQueue<Happening> planned =
      new PriorityQueue<>(Comparator.comparingDouble(Happening::micros));
  private final EdgeMemory memory = new EdgeMemory();
  private final Map<Gate, EdgeKind> levels = new EnumMap<>(Gate.class);
  private final Map<Gate, GateFlood> floods = new EnumMap<>(Gate.class);
  private double nextIdentityMicros;
  private double nextBeatMicros;
  private int edges;
  private int merged;
  private int dropped;

  PretendBoard(RehearsalSettings settings, double startMicros) {
    this.settings = settings;
    this.startMicros = startMicros;
    this.random = new Random(settings.seed() ^ 0x5EED);
    this.counter = PretendCounter.ofResonator(startMicros, HZ, random);
    this.wire = new PretendWire(random);
    this.sensors = new PretendSensors(random);
    this.nextIdentityMicros = startMicros;
    this.nextBeatMicros = startMicros + 200_000;
    for (Gate gate : Gate.values()) {
      levels.put(gate, EdgeKind.CLEAR);
      floods.put(gate, new GateFlood());
    }
  }

  void plan(Collection<Happening> happenings) {
    planned.addAll(happenings);
  }

  /** When the board next does or says something, unless more is planned or it is asked before. */
  double nextMicros() {
    return Math.min(wire.nextMicros(), nextDoingMicros());
  }

  /** Does everything that is due by now. */
  void advance(double nowMicros) {
    while (nextDoingMicros() <= nowMicros) {
      doNext();
    }
  }

  /** Takes out the lines that came through the wire by now. */
  byte[] takeDue(double nowMicros) {
    return wire.takeDue(nowMicros);
  }

  private double nextDoingMicros() {
    double next = Math.min(nextIdentityMicros, nextBeatMicros);
    for (GateFlood flood : floods.values()) {
      next = Math.min(next, flood.reportMicros());
    }
    return planned.isEmpty() ? next : Math.min(next, planned.peek().micros());
  }

  private void doNext() {
    double micros = nextDoingMicros();
    if (!planned.isEmpty() && planned.peek().micros() == micros) {
      carryOut(planned.remove());
    } else if (nextIdentityMicros == micros) {
      nextIdentityMicros += IDENTITY_EVERY_MICROS;
      sayIdentity(micros);
    } else if (nextBeatMicros == micros) {
      nextBeatMicros += BEAT_EVERY_MICROS + MOST_DITHER_MICROS * random.nextDouble();
      sayBeat(micros);
    } else {
      floods.forEach((gate, flood) -> reportLoss(micros, gate, flood));
    }
  }

  private void carryOut(Happening happening) {
    if (happening instanceof Noise noise) {
      wire.raw(noise.micros(), noise.bytes());
    } else if (happening instanceof Beam beam) {
      stamp(beam);
    }
  }

  private void stamp(Beam beam) {
    levels.put(beam.gate(), beam.kind() == EdgeKind.CLEAR ? EdgeKind.CLEAR : EdgeKind.BLOCKED);
    int late = random.nextInt(50) == 0 ? 1 + random.nextInt(MOST_LATE_TICKS) : 0;
    long ticks = counter.ticks(beam.micros()) + (late == 0 ? 0 : random.nextInt(late + 1));
    if (floods.get(beam.gate()).dropIfTooMany(beam.micros(), ticks)) {
      dropped++;
      return;
    }
    edges++;
    merged += beam.kind() == EdgeKind.MERGED ? 1 : 0;
    String fields =
        PretendWire.fields(
            settings.boot(),
            edges,
            beam.gate(),
            beam.kind().letter(),
            PretendCounter.low32(ticks),
            late);
    memory.add(edges, fields);
    wire.send(beam.micros(), 'E', fields, beam.fate());
  }

  private void reportLoss(double micros, Gate gate, GateFlood flood) {
    if (flood.reportMicros() <= micros) {
      flood
          .takeLoss()
          .ifPresent(
              loss ->
                  say(
                      micros,
                      'L',
                      settings.boot(),
                      gate,
                      PretendCounter.low32(loss.firstTicks()),
                      PretendCounter.low32(loss.lastTicks()),
                      loss.count()));
    }
  }

  private void sayBeat(double micros) {
    say(
        micros,
        'H',
        settings.boot(),
        counter.ticks(micros),
        wire.queuedBytes(micros),
        edges,
        merged,
        dropped,
        "" + levels.get(Gate.A).letter() + levels.get(Gate.B).letter(),
        sensors.fields((micros - startMicros) / 1e6, levels));
  }

  void sayIdentity(double micros) {
    say(
        micros,
        'I',
        1,
        "rehearsal",
        settings.device(),
        settings.boot(),
        HZ,
        2,
        0,
        0,
        EdgeMemory.KEEP,
        'P');
  }

  /** Answers a request for every kept edge from one on. */
  void sayAgain(double micros, int boot, int fromEdge) {
    if (boot != settings.boot()) {
      sayIdentity(micros);
      return;
    }
    int oldest = memory.oldest(edges);
    if (fromEdge < oldest) {
      say(micros, 'M', boot, fromEdge, oldest - 1);
    }
    for (EdgeMemory.Kept kept : memory.all()) {
      if (kept.number() >= fromEdge) {
        wire.send(micros, 'E', kept.fields(), Fate.SENT);
      }
    }
  }

  private void say(double micros, char type, Object... fields) {
    wire.send(micros, type, PretendWire.fields(fields), Fate.SENT);
  }
}
