package castwell.analysis.misfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.misfit.Expected.Sample;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Against R 4.2.2: predict(lm(x ~ g), se.fit = TRUE), pt and dt of (y - fit) / sqrt(s2 + se2). */
class ExpectedTest {
  private static final List<Sample> SAMPLES =
      List.of(
          new Sample(new double[] {50.1, 50.4, 49.8, 50.0, 50.3}, 0),
          new Sample(new double[] {47.0, 47.5, 47.2, 46.9, 47.1}, 0),
          new Sample(new double[] {44.0, 44.3, 44.6, 43.9, 44.2, 44.1}, 0));

  private final List<Expected> expected = Expected.of(SAMPLES);

  @Test
  void meansAndScalesAreThoseOfAPredictionInterval() {
    assertThat(expected).extracting(Expected::degreesOfFreedom).containsOnly(13.0);
    assertThat(expected.get(0).mean()).isCloseTo(50.12, within(1e-12));
    assertThat(expected.get(2).mean()).isCloseTo(44.1833333333333, within(1e-12));
    assertThat(expected.get(0).scale()).isCloseTo(0.262824890520140, within(1e-12));
    assertThat(expected.get(2).scale()).isCloseTo(0.259148836883595, within(1e-12));
  }

  @Test
  void probabilitiesAndLikelihoodsAreStudentsT() {
    double[] p = {7.90089698708181e-08, 5.53166180810318e-01, 2.03508071153638e-08};
    double[] logLikelihood = {-15.618218250361275, 0.201353750321267, -17.055257794450565};
    for (int i = 0; i < 3; i++) {
      assertThat(expected.get(i).pValue(47.3)).isCloseTo(p[i], within(1e-9 * p[i]));
      assertThat(expected.get(i).logLikelihood(47.3)).isCloseTo(logLikelihood[i], within(1e-9));
    }
    assertThat(expected.get(0).pValue(49.2)).isCloseTo(3.91082387486986e-03, within(1e-12));
  }

  /** Variances add (JCGM 100:2008, 5.1.2). */
  @Test
  void anotherDayWidensIt() {
    Sample otherDay = new Sample(SAMPLES.get(1).values(), 0.5);
    Expected wider = Expected.of(List.of(SAMPLES.get(0), otherDay, SAMPLES.get(2))).get(1);
    assertThat(wider.scale()).isCloseTo(Math.hypot(0.262824890520140, 0.5), within(1e-12));
  }

  @Test
  void whatTellsNoSpreadTellsNothing() {
    assertThat(Expected.of(List.of())).isEmpty();
    assertThat(Expected.of(List.of(new Sample(new double[] {50}, 0)))).isEmpty();
    assertThat(Expected.of(List.of(new Sample(new double[] {50, 50, 50}, 0)))).isEmpty();
  }
}
