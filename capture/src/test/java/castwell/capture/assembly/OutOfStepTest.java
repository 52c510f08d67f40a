package castwell.capture.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.shot.Passage;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Lines late, lost and sent again at random, within what the protocol allows: the passages are
 * those that went through all the same.
 */
@Tag("slow")
class OutOfStepTest {
  private static final int RANGES = 150;
  private static final int OBJECTS = 30;

  private final long seed = Seed.of(OutOfStepTest.class);
  private final Random random = new Random(seed);
  private PretendGates gates = new PretendGates();
  private double endSeconds;

  @Test
  void aBoardThatAnswersMakesEveryPassageWhole() {
    for (int range = 0; range < RANGES; range++) {
      List<List<Stamp>> objects = objects(0.35, 6);
      RandomWire wire = new RandomWire(random, flat(objects), Set.of(), true);
      assertThat(wire.shots(endSeconds + 5))
          .as("seed %d, range %d", seed, range)
          .isEqualTo(objects.stream().map(Truth::whole).toList());
    }
  }

  @Test
  void aSilentBoardsLostLinesAreNamedInTheirOwnPassages() {
    for (int range = 0; range < RANGES; range++) {
      List<List<Stamp>> objects = objects(3.5, 3);
      Set<Integer> lost = lost(objects);
      RandomWire wire = new RandomWire(random, flat(objects), lost, false);
      List<Passage> truth = objects.stream().map(object -> Truth.without(object, lost)).toList();
      assertThat(wire.shots(endSeconds + 5)).as("seed %d, range %d", seed, range).isEqualTo(truth);
    }
  }

  private List<List<Stamp>> objects(double leastApartSeconds, double furtherApartSeconds) {
    gates = new PretendGates();
    double seconds = 1.5;
    List<List<Stamp>> objects = new ArrayList<>();
    for (int i = 0; i < OBJECTS; i++) {
      objects.add(object(seconds));
      seconds += leastApartSeconds + random.nextDouble() * furtherApartSeconds;
    }
    endSeconds = seconds;
    return objects;
  }

  private List<Stamp> object(double seconds) {
    return switch (random.nextInt(8)) {
      case 0 -> gates.flutteringArrow(seconds);
      case 1 -> gates.arrowUnseenAt(seconds, random.nextInt(4));
      case 2 -> gates.arrowMergedAt(seconds, random.nextInt(4));
      case 3 -> gates.object(seconds, 15 + random.nextInt(100), 0.02 + random.nextDouble());
      case 4 -> List.of(gates.single(seconds, Gate.A, EdgeKind.BLOCKED));
      default -> gates.arrow(seconds);
    };
  }

  /** At times one line of an object, at times all of them. */
  private Set<Integer> lost(List<List<Stamp>> objects) {
    Set<Integer> lost = new HashSet<>();
    for (List<Stamp> object : objects) {
      int dice = random.nextInt(10);
      if (dice == 0) {
        object.forEach(stamp -> lost.add(stamp.number()));
      } else if (dice < 6) {
        lost.add(object.get(random.nextInt(object.size())).number());
      }
    }
    return lost;
  }

  private static List<Stamp> flat(List<List<Stamp>> objects) {
    return objects.stream().flatMap(List::stream).toList();
  }
}
