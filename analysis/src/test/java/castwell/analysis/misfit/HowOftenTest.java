package castwell.analysis.misfit;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static castwell.analysis.unit.Units.METRES_PER_INCH;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.misfit.Expected.Sample;
import castwell.analysis.misfit.Misfit.Candidate;
import castwell.analysis.misfit.Misfit.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How often right tags are doubted and wrong ones found, by a seeded simulation: five earlier shots
 * of each bow with each arrow, a scatter of 0.6 % in speed and 3 mm in length. The table by {@code
 * mvn -pl analysis test -Dtest=HowOftenTest -Dcastwell.repeats=200000}.
 */
@Tag("slow")
class HowOftenTest {
  private static final int REPEATS = Integer.getInteger("castwell.repeats", 4_000);
  private static final int SHOTS_A_RACK = 40;
  private static final int KNOWN = 5;
  private static final double SCATTER = 0.006;
  private static final double LENGTH_SCATTER_M = 0.003;
  private static final double DAY = 0.01;

  private static final double[] GRAINS = {323, 408, 491, 577, 662};
  private static final double[] INCHES = {28.3, 28.9, 29.4, 29.8, 30.6};

  private final long seed = Seed.of(HowOftenTest.class);
  private final Random random = new Random(seed);
  private final DoubleSupplier normal = random::nextGaussian;

  /** Student's t with 3 degrees of freedom, of standard deviation 1. */
  private final DoubleSupplier heavyTails =
      () -> {
        double chi = 0;
        for (int i = 0; i < 3; i++) {
          double z = random.nextGaussian();
          chi += z * z;
        }
        return random.nextGaussian() / Math.sqrt(chi);
      };

  /**
   * @param bows how many
   * @param arrows how many
   * @param lengths whether arrows differ in length
   * @param otherDay whether all that is known is of another day
   */
  private record Rack(int bows, int arrows, boolean lengths, boolean otherDay) {
    double speed(int what) {
      double joules = 36 + 5.0 * (what / arrows);
      double virtualMassKg = 0.008 + 0.001 * (what / arrows);
      return Math.sqrt(2 * joules / (GRAINS[what % arrows] * KILOGRAMS_PER_GRAIN + virtualMassKg));
    }

    double length(int what) {
      return INCHES[lengths ? what % arrows : 0] * METRES_PER_INCH;
    }

    int size() {
      return bows * arrows;
    }
  }

  private List<Candidate<Integer>> known(Rack rack) {
    double day = rack.otherDay() ? DAY : 0;
    double shift = 1 + day * random.nextGaussian();
    List<Sample> speeds = new ArrayList<>();
    List<Sample> lengths = new ArrayList<>();
    for (int what = 0; what < rack.size(); what++) {
      double speed = rack.speed(what) * shift;
      double length = rack.length(what);
      speeds.add(sample(speed, SCATTER * speed, day * speed));
      lengths.add(sample(length, LENGTH_SCATTER_M, day * length));
    }
    List<Expected> bySpeed = Expected.of(speeds);
    List<Expected> byLength = Expected.of(lengths);
    List<Candidate<Integer>> known = new ArrayList<>();
    for (int what = 0; what < rack.size(); what++) {
      known.add(new Candidate<>(what, bySpeed.get(what), Optional.of(byLength.get(what))));
    }
    return known;
  }

  private Sample sample(double mean, double sd, double shift) {
    double[] values = new double[KNOWN];
    for (int i = 0; i < KNOWN; i++) {
      values[i] = mean + sd * random.nextGaussian();
    }
    return new Sample(values, shift);
  }

  /** How often something is told, and how often the truth is among it. */
  private record Shares(double told, double found) {}

  /** Which is tagged when another was shot. */
  private interface Tagging {
    int tagged(Rack rack, int shot);
  }

  private Shares shoot(String name, Rack rack, DoubleSupplier scatter, Tagging tagging) {
    int told = 0;
    int found = 0;
    int shots = 0;
    while (shots < REPEATS) {
      List<Candidate<Integer>> known = known(rack);
      for (int i = 0; i < SHOTS_A_RACK; i++, shots++) {
        int shot = random.nextInt(rack.size());
        int tagged = tagging.tagged(rack, shot);
        double speed = rack.speed(shot) * (1 + SCATTER * scatter.getAsDouble());
        double length = rack.length(shot) + LENGTH_SCATTER_M * random.nextGaussian();
        List<Candidate<Integer>> others = new ArrayList<>(known);
        others.remove(tagged);
        List<Integer> fits =
            Misfit.find(known.get(tagged), others, speed, OptionalDouble.of(length)).stream()
                .map(Fit::what)
                .toList();
        told += fits.isEmpty() ? 0 : 1;
        found += fits.contains(shot) ? 1 : 0;
      }
    }
    System.out.printf(
        "  %-52s told %6.3f %%, right %6.2f %%%n",
        name, 100.0 * told / shots, 100.0 * found / shots);
    return new Shares((double) told / shots, (double) found / shots);
  }

  private static int right(Rack rack, int shot) {
    return shot;
  }

  private static int nextArrow(Rack rack, int shot) {
    int arrow = shot % rack.arrows();
    return shot - arrow + (arrow + 1) % rack.arrows();
  }

  private static int nextBow(Rack rack, int shot) {
    return (shot + rack.arrows()) % rack.size();
  }

  @Test
  void rightTagsAreHardlyEverDoubted() {
    System.out.printf("Right tags doubted, %d shots each, seed %d%n", REPEATS, seed);
    for (Rack rack :
        List.of(
            new Rack(1, 2, false, false),
            new Rack(2, 3, true, false),
            new Rack(5, 5, true, false),
            new Rack(5, 5, false, false),
            new Rack(5, 5, true, true))) {
      double told = shoot(rack.toString(), rack, normal, HowOftenTest::right).told();
      assertThat(told).as("%s, seed %d", rack, seed).isLessThan(0.004);
    }
    Rack full = new Rack(5, 5, false, false);
    double heavy = shoot("heavy tails " + full, full, heavyTails, HowOftenTest::right).told();
    assertThat(heavy).as("heavy tails, seed %d", seed).isLessThan(0.015);
  }

  @Test
  void wrongTagsAreMostlyFoundWhereTheyCanBe() {
    System.out.printf("Wrong tags, %d shots each, seed %d%n", REPEATS, seed);
    Rack today = new Rack(5, 5, true, false);
    assertThat(shoot("arrow: " + today, today, normal, HowOftenTest::nextArrow).found())
        .as("another arrow, seed %d", seed)
        .isGreaterThan(0.85);
    Rack sameLength = new Rack(5, 5, false, false);
    assertThat(shoot("arrow: " + sameLength, sameLength, normal, HowOftenTest::nextArrow).found())
        .as("another arrow of the same length, seed %d", seed)
        .isGreaterThan(0.8);
    assertThat(shoot("bow: " + today, today, normal, HowOftenTest::nextBow).found())
        .as("another bow, seed %d", seed)
        .isGreaterThan(0.5);
    Rack otherDay = new Rack(5, 5, true, true);
    shoot("arrow: " + otherDay, otherDay, normal, HowOftenTest::nextArrow);
    shoot("bow: " + otherDay, otherDay, normal, HowOftenTest::nextBow);
  }
}
