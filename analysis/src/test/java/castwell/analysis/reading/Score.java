package castwell.analysis.reading;

import castwell.analysis.reading.Scene.Shot;
import castwell.analysis.reading.Scene.Told;
import castwell.analysis.shot.Edge;
import castwell.analysis.speed.Flight;
import castwell.analysis.uncertainty.Kind;
import castwell.analysis.uncertainty.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** How well so many passages with one disturbance were read. */
final class Score {
  private static final double REACH = 2.5;
  private static final double SAME_PLACE_M = 0.2;

  int passages;
  int told;
  int counted;
  int within;
  int judged;

  /** Arrows that must not count, or passages without any. */
  int none;

  /** How often one of them did, or something that isn't there. */
  int wrong;

  /** How often something counted beside the arrows that are there. */
  int beside;

  int mostTried;
  int mostWeighed;
  private final List<Double> uncertainties = new ArrayList<>();

  static Score of(Disturbance disturbance, int passages, long seed) {
    Random random = new Random(seed ^ disturbance.name().hashCode());
    Score score = new Score();
    for (int i = 0; i < passages; i++) {
      score.add(Trial.of(disturbance, random));
    }
    return score;
  }

  private void add(Trial trial) {
    passages++;
    List<Trial.Judged> left = new ArrayList<>();
    for (Trial.Judged passage : trial.passages()) {
      mostTried = Math.max(mostTried, passage.assessment().reading().work().tried());
      mostWeighed = Math.max(mostWeighed, passage.assessment().reading().work().weighed());
      if (passage.assessment().verdict().counts()) {
        left.add(passage);
      }
    }
    trial.shots().forEach(shot -> add(shot, left));
    boolean plain = trial.shots().stream().anyMatch(shot -> shot.told() == Told.PLAINLY);
    none += trial.shots().isEmpty() ? 1 : 0;
    beside += plain ? left.size() : 0;
    wrong += !plain && !left.isEmpty() ? 1 : 0;
  }

  private void add(Shot shot, List<Trial.Judged> left) {
    told += shot.told() == Told.PLAINLY ? 1 : 0;
    none += shot.told() == Told.NOT_AT_ALL ? 1 : 0;
    for (Trial.Judged passage : left) {
      if (isOf(shot, passage)) {
        left.remove(passage);
        counted += shot.told() == Told.PLAINLY ? 1 : 0;
        wrong += shot.told() == Told.NOT_AT_ALL ? 1 : 0;
        if (shot.told() != Told.NOT_AT_ALL) {
          judge(shot, passage.assessment().measurement().speed().orElseThrow());
        }
        return;
      }
    }
  }

  private static boolean isOf(Shot shot, Trial.Judged passage) {
    Edge front = passage.assessment().reading().arrow().orElseThrow().ends().frontA().orElseThrow();
    double seconds = (front.ticks() - shot.frontAtA()) / Flight.HZ;
    return Math.abs(seconds) * shot.speedMps() < SAME_PLACE_M;
  }

  private void judge(Shot shot, Quantity speed) {
    double u = speed.standardUncertainty(Kind.OWN);
    judged++;
    within += Math.abs(speed.value() - shot.speedMps()) <= REACH * u ? 1 : 0;
    uncertainties.add(u / shot.speedMps());
  }

  /** The median relative own uncertainty of what counted. */
  double medianU() {
    return uncertainties.stream()
        .sorted()
        .skip(uncertainties.size() / 2)
        .findFirst()
        .orElse(Double.NaN);
  }

  Score plus(Score other) {
    Score sum = new Score();
    sum.passages = passages + other.passages;
    sum.told = told + other.told;
    sum.counted = counted + other.counted;
    sum.within = within + other.within;
    sum.judged = judged + other.judged;
    sum.none = none + other.none;
    sum.wrong = wrong + other.wrong;
    sum.beside = beside + other.beside;
    sum.mostTried = Math.max(mostTried, other.mostTried);
    sum.mostWeighed = Math.max(mostWeighed, other.mostWeighed);
    sum.uncertainties.addAll(uncertainties);
    sum.uncertainties.addAll(other.uncertainties);
    return sum;
  }
}
