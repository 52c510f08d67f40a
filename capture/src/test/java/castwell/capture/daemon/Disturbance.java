package castwell.capture.daemon;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.daemon.Flight.Beam;
import castwell.capture.daemon.PaperWire.Fate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** What may befall one object's beams, and whether a speed can still come out. */
enum Disturbance {
  CLEAN(true) {
    @Override
    void befall(List<Beam> beams, Random random) {}
  },
  MISSING_EDGE(false) {
    @Override
    void befall(List<Beam> beams, Random random) {
      beams.remove(random.nextInt(beams.size()));
    }
  },
  ONE_GATE(false) {
    @Override
    void befall(List<Beam> beams, Random random) {
      Gate blind = anyGate(random);
      beams.removeIf(beam -> beam.gate() == blind);
    }
  },
  LOST_LINE(false) {
    @Override
    void befall(List<Beam> beams, Random random) {
      fares(beams, random.nextInt(beams.size()), Fate.LOST);
    }
  },
  CORRUPTED_LINE(false) {
    @Override
    void befall(List<Beam> beams, Random random) {
      fares(beams, random.nextInt(beams.size()), Fate.CORRUPTED);
    }
  },
  ALL_LINES_LOST(false) {
    @Override
    void befall(List<Beam> beams, Random random) {
      beams.replaceAll(beam -> beam.faring(Fate.LOST));
    }
  },
  SENT_TWICE(true) {
    @Override
    void befall(List<Beam> beams, Random random) {
      beams.replaceAll(beam -> beam.faring(Fate.TWICE));
    }
  },
  FLUTTER(true) {
    @Override
    void befall(List<Beam> beams, Random random) {
      boolean both = random.nextBoolean();
      for (Gate gate : both ? List.of(Gate.values()) : List.of(anyGate(random))) {
        double tail =
            beams.stream().filter(b -> isTail(b, gate)).findFirst().orElseThrow().seconds();
        for (int pair = random.nextInt(3); pair >= 0; pair--) {
          // Some bounce back only after the tail, so that "clear" may follow "clear".
          double clear = tail - 0.1e-3 - 1.9e-3 * random.nextDouble();
          beams.add(Flight.beam(clear, gate, EdgeKind.CLEAR));
          beams.add(Flight.beam(clear + 0.7e-3 * random.nextDouble(), gate, EdgeKind.BLOCKED));
        }
      }
    }
  },
  WRONG_ORDER(false) {
    @Override
    void befall(List<Beam> beams, Random random) {
      beams.replaceAll(Beam::atOtherGate);
    }
  },
  MERGED_STAMP(false) {
    @Override
    void befall(List<Beam> beams, Random random) {
      int which = random.nextInt(beams.size());
      beams.set(which, beams.get(which).as(EdgeKind.MERGED));
    }
  },
  LATE_STAMPS(true) {
    @Override
    void befall(List<Beam> beams, Random random) {
      double shift = 10e-6 * random.nextDouble();
      beams.replaceAll(beam -> beam.late(shift, 20));
    }
  };

  private final boolean countsStill;

  Disturbance(boolean countsStill) {
    this.countsStill = countsStill;
  }

  boolean countsStill() {
    return countsStill;
  }

  /** Changes a clean passage's beams. */
  abstract void befall(List<Beam> beams, Random random);

  List<Beam> beams(Flight flight, Random random) {
    List<Beam> beams = new ArrayList<>(flight.beams());
    befall(beams, random);
    Flight.sort(beams);
    return beams;
  }

  private static Gate anyGate(Random random) {
    return random.nextBoolean() ? Gate.A : Gate.B;
  }

  private static boolean isTail(Beam beam, Gate gate) {
    return beam.gate() == gate && beam.kind() == EdgeKind.CLEAR;
  }

  private static void fares(List<Beam> beams, int which, Fate fate) {
    beams.set(which, beams.get(which).faring(fate));
  }
}
