package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.analysis.bow.JointRegion;
import castwell.analysis.compare.Rework;
import castwell.analysis.season.SimulatedSeason.Errors;
import castwell.analysis.season.SimulatedSeason.Shot;
import castwell.analysis.uncertainty.TMixture;
import castwell.analysis.unit.Units;
import java.awt.geom.Path2D;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * How often 95 % intervals hold the truth, over seasons of one session to eight, days as they are
 * commonly told to be; with {@code -Dcastwell.repeats=N} of more seasons.
 */
class SeasonCoverageTest {
  private static final int REPEATS = Integer.getInteger("castwell.repeats", 15);
  private static final double[][] MASSES = {
    {400, 480, 580}, {400, 460, 530, 610}, {380, 430, 490, 550, 620}
  };
  private static final double[][] DAYS = {{0, 0}, {0.003, 0.002}, {0.006, 0.004}, {0.01, 0.006}};

  private static final class Tally {
    private int held;
    private int all;

    void add(boolean holds) {
      held += holds ? 1 : 0;
      all++;
    }

    double share() {
      return (double) held / all;
    }

    /** What chance alone may do to a share of 95 %, three times its standard deviation. */
    double slack() {
      return 3 * Math.sqrt(0.95 * 0.05 / all);
    }
  }

  private final Map<String, Tally> tallies = new LinkedHashMap<>();

  private void add(String what, boolean holds) {
    tallies.computeIfAbsent(what, name -> new Tally()).add(holds);
  }

  private void holds(String what, TMixture told, double truth) {
    add(what, told.interval(0.95).contains(truth));
  }

  private static Errors errors(Random random, double... day) {
    double[] arrow = {0, 0.002, 0.003};
    double[] shot = {0.003, 0.006, 0.01};
    return new Errors(day[0], day[1], arrow[random.nextInt(3)], shot[random.nextInt(3)], 0.002, 1);
  }

  @Test
  void ofTheBow() {
    Random random = new Random(Seed.of(SeasonCoverageTest.class));
    for (int i = 0; i < REPEATS; i++) {
      for (double[] day : DAYS) {
        for (int sessions : new int[] {1, 2, 3, 5, 8}) {
          Errors errors = errors(random, day);
          int bows = 1 + random.nextInt(3);
          SimulatedSeason simulated =
              new SimulatedSeason(random, errors, bows, MASSES[random.nextInt(3)]);
          int shots = 3 + random.nextInt(5);
          for (int j = 0; j < sessions; j++) {
            simulated.session(shots, all(bows));
          }
          Season season = Season.fit(simulated.cells(), Priors.ASSUMED);
          StateCurve curve = season.state("bow 0");
          double massKg = 500 * Units.KILOGRAMS_PER_GRAIN;
          double truth = simulated.logSpeed(0, 500);
          holds("cast", curve.logSpeed(massKg), truth);
          holds("cast, " + sessions + " sessions", curve.logSpeed(massKg), truth);
          holds("energy", curve.energy().logEnergy(), simulated.logEnergy(0));
          double e = meanKg(simulated) / (meanKg(simulated) + simulated.virtualMassKg(0));
          holds("virtual mass", curve.energy().elasticity(), e);
          curve
              .energy()
              .region(0.95)
              .ifPresent(region -> add("energy and virtual mass", holds(region, simulated)));
          double next = random.nextGaussian() * Math.hypot(errors.day(), errors.bowDay());
          holds("next day", curve.nextDay(massKg, 0, Double.POSITIVE_INFINITY), truth + next);
          if (bows > 1) {
            holds(
                "difference of two bows",
                curve.lessThan(massKg, season.state("bow 1"), massKg),
                truth - simulated.logSpeed(1, 500));
          }
        }
      }
    }
    tell();
  }

  @Test
  void ofAChange() {
    Random random = new Random(Seed.of(SeasonCoverageTest.class) + 1);
    int wrongSigns = 0;
    for (int i = 0; i < REPEATS; i++) {
      for (double[] day : DAYS) {
        for (int controls : new int[] {0, 1, 2, 4}) {
          double change = i % 2 == 0 ? 0 : 0.015;
          int sessions = 1 + random.nextInt(3);
          SimulatedSeason simulated =
              new SimulatedSeason(random, errors(random, day), controls + 1, MASSES[1]);
          for (int j = 0; j < 2 * sessions; j++) {
            Shot[] shots = all(controls + 1);
            shots[0] = j < sessions ? shots[0] : new Shot(0, "reworked", change);
            simulated.session(5, shots);
          }
          Season season = Season.fit(simulated.cells(), Priors.ASSUMED);
          Rework rework = new Rework(season.state("bow 0"), season.state("reworked"));
          TMixture told = rework.change(500 * Units.KILOGRAMS_PER_GRAIN);
          holds("change", told, change);
          holds("change, " + controls + " controls", told, change);
          wrongSigns += told.interval(0.95).high() < 0 && change > 0 ? 1 : 0;
          if (change == 0) {
            add("nothing said to have changed where nothing did", told.pValue() > 0.05);
            rework
                .whatMoved()
                .ifPresent(
                    moved -> {
                      add("energy said to have stayed", moved.energyP() > 0.05);
                      add("virtual mass said to have stayed", moved.virtualMassP() > 0.05);
                    });
          }
        }
      }
    }
    tell();
    assertThat(wrongSigns).isLessThanOrEqualTo(1);
  }

  /** A warm day takes something from all bows, with 0.2 % a degree at most likely. */
  @Test
  void ofWeather() {
    Random random = new Random(Seed.of(SeasonCoverageTest.class) + 2);
    for (int i = 0; i < REPEATS; i++) {
      for (double[] day : DAYS) {
        for (int sessions : new int[] {6, 10, 20}) {
          double effect = 0.002 * random.nextGaussian();
          int bows = 1 + random.nextInt(3);
          Errors errors = errors(random, day);
          SimulatedSeason simulated = new SimulatedSeason(random, errors, bows, MASSES[0]);
          Map<String, Double> celsius = new HashMap<>();
          double[] truth = new double[sessions];
          for (int j = 0; j < sessions; j++) {
            double warm = 5 * random.nextGaussian();
            celsius.put("session " + j, warm);
            Shot[] shots = all(bows);
            Arrays.setAll(shots, b -> new Shot(b, "bow " + b, effect * warm));
            truth[j] = effect * warm + simulated.session(4, shots);
          }
          Covariate temperature = Covariate.temperature(celsius);
          Season season = Season.fit(simulated.cells(), List.of(temperature), Priors.ASSUMED);
          holds("a degree", season.effect(temperature).orElseThrow(), effect);
          double mean = celsius.values().stream().mapToDouble(c -> c).average().orElseThrow();
          holds(
              "cast with weather",
              season.state("bow 0").logSpeed(500 * Units.KILOGRAMS_PER_GRAIN),
              simulated.logSpeed(0, 500) + effect * mean);
          List<SessionDays.Day> days = season.days();
          for (int j = 0; j < sessions; j++) {
            holds("a session's day", days.get(j).effect(), truth[j] - effect * mean);
          }
        }
      }
    }
    tell();
  }

  private static boolean holds(JointRegion region, SimulatedSeason simulated) {
    Path2D outline = new Path2D.Double();
    JointRegion.Corner first = region.corners().get(0);
    outline.moveTo(first.energyJ(), first.virtualMassKg());
    region.corners().forEach(corner -> outline.lineTo(corner.energyJ(), corner.virtualMassKg()));
    return outline.contains(Math.exp(simulated.logEnergy(0)), simulated.virtualMassKg(0));
  }

  private static double meanKg(SimulatedSeason simulated) {
    return new Layout(simulated.cells(), List.of()).arrows.meanKg;
  }

  private static Shot[] all(int bows) {
    Shot[] shots = new Shot[bows];
    for (int b = 0; b < bows; b++) {
      shots[b] = Shot.of(b);
    }
    return shots;
  }

  private void tell() {
    tallies.forEach(
        (what, tally) -> System.out.printf("| %s | %.1f %% |%n", what, 100 * tally.share()));
    assertThat(tallies)
        .allSatisfy(
            (what, tally) ->
                assertThat(tally.share()).as(what).isGreaterThan(0.95 - tally.slack()));
  }
}
