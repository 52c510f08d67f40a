package castwell.analysis.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.compare.SessionDesign;
import castwell.analysis.compare.SessionPower;
import org.junit.jupiter.api.Test;

/** Against an independent program in R, by the season of a rework in resources/season. */
class SessionPowerTest {
  private static final Expected REWORK = new Expected("rework");
  private static final SessionPower POWER =
      new SessionPower(Season.fit(REWORK.cells(), Priors.ASSUMED).grid(), 0.006, 0.002, 0.05);

  private static SessionDesign design(int sessions, int controls) {
    return new SessionDesign(sessions, sessions, controls, 4, 5);
  }

  @Test
  void chanceAsReckonedInR() {
    for (int controls = 0; controls <= 2; controls++) {
      String of = Integer.toString(controls);
      for (int sessions : new int[] {1, 3}) {
        double theirs = REWORK.of("plan", of, Integer.toString(sessions));
        assertThat(POWER.of(design(sessions, controls), 0.015)).isCloseTo(theirs, within(1e-6));
        assertThat(POWER.of(design(sessions, controls), -0.015)).isCloseTo(theirs, within(1e-6));
      }
      assertThat(design(1, controls).sd(0.006, 0.0036, 0.006, 0.002))
          .isCloseTo(REWORK.of("plan", of, "sd"), within(1e-12));
      assertThat(design(1, controls).sd(0.006, 0.0036, 0, 0.002))
          .isCloseTo(REWORK.of("plan", of, "floor"), within(1e-9));
    }
  }

  @Test
  void noNumberOfShotsGetsUnderTheFloor() {
    double floor = POWER.floor(design(1, 2));
    double many = POWER.halfWidth(new SessionDesign(1, 1, 2, 4, 100_000));
    assertThat(many).isGreaterThan(floor).isCloseTo(floor, within(1e-4 * floor));
    assertThat(POWER.halfWidth(design(1, 2))).isGreaterThan(many);
  }

  /**
   * So little is known of days after one session that few degrees of freedom mustn't blow it up.
   */
  @Test
  void moreShotsNeverTellLess() {
    SessionPower assumed = new SessionPower(VarianceGrid.assumed(Priors.ASSUMED), 0.01, 0, 0.05);
    for (int sessions = 1; sessions <= 4; sessions++) {
      for (int controls = 0; controls <= 4; controls++) {
        double before = Double.POSITIVE_INFINITY;
        for (int shots : new int[] {1, 3, 10, 100, 100_000}) {
          SessionDesign design = new SessionDesign(sessions, sessions, controls, 3, shots);
          double half = assumed.halfWidth(design);
          assertThat(half).isPositive().isLessThan(before);
          before = half;
        }
        SessionDesign design = new SessionDesign(sessions, sessions, controls, 3, 1);
        assertThat(assumed.floor(design)).isLessThan(before);
      }
    }
  }

  @Test
  void theCheapestDesignTellsItAndOneSessionLessDoesNot() {
    SessionDesign cheapest = POWER.cheapest(0.015, 0.8, 4, 2).orElseThrow();
    assertThat(POWER.of(cheapest, 0.015)).isGreaterThanOrEqualTo(0.8);
    int sessions = cheapest.before() - 1;
    assertThat(sessions).isPositive();
    for (int controls = 0; controls <= 2; controls++) {
      assertThat(POWER.of(new SessionDesign(sessions, sessions, controls, 4, 10), 0.015))
          .isLessThan(0.8);
    }
    assertThat(POWER.cheapest(1e-4, 0.8, 4, 2)).isEmpty();
  }

  @Test
  void sessionsAfterAloneHelpUntilThoseBeforeAreTooFew() {
    SessionDesign two = new SessionDesign(2, 1, 1, 4, 5);
    int after = POWER.sessionsAfter(two, 0.015, 0.6).orElseThrow();
    assertThat(after).isGreaterThan(1);
    assertThat(POWER.of(new SessionDesign(2, after, 1, 4, 5), 0.015)).isGreaterThanOrEqualTo(0.6);
    assertThat(POWER.of(new SessionDesign(2, after - 1, 1, 4, 5), 0.015)).isLessThan(0.6);
    assertThat(POWER.sessionsAfter(two, 0.002, 0.6)).isEmpty();
    assertThat(POWER.sessionsAfter(new SessionDesign(3, 3, 2, 4, 5), 0.015, 0.8)).hasValue(3);
  }

  /** Five nodes to 2.4 standard deviations have 0.991 of a normal distribution's, by hand. */
  @Test
  void whatIsAssumedBeforeAnySession() {
    VarianceGrid assumed = VarianceGrid.assumed(Priors.ASSUMED);
    double mean = 0;
    double square = 0;
    for (int g = 0; g < assumed.size(); g++) {
      mean += assumed.weights()[g] * Math.log(assumed.day(g));
      square += assumed.weights()[g] * Math.pow(Math.log(assumed.day(g) / 0.006), 2);
    }
    assertThat(mean).isCloseTo(Math.log(0.006), within(1e-12));
    assertThat(Math.sqrt(square)).isCloseTo(0.991 * 0.6, within(1e-3));
  }
}
