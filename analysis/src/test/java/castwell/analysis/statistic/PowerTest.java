package castwell.analysis.statistic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exact power of t tests. */
class PowerTest {
  /** R's help of power.t.test, from memory: n = 20, delta = sd = 1 gives 0.8689528. */
  @Test
  void twentyShotsEach() {
    assertThat(TPower.of(2, 20, 1, 1, 0.05)).isCloseTo(0.8689528, within(1e-7));
  }

  /** R's help of power.t.test, from memory: power 0.90, delta = sd = 1 takes n = 22.02110. */
  @Test
  void shotsForNinetyPercent() {
    assertThat(TPower.shotsEach(2, 1, 1, 0.05, 0.9)).isCloseTo(22.02110, within(1e-5));
  }

  /**
   * mpmath 1.3.0, quad of 2 (nu/2)^(nu/2) / Gamma(nu/2) exp(nu (w - exp(2 w)/2)) ncdf(t exp(w) -
   * delta) over w with 30 digits. Far tails and large noncentralities, where R's pt loses digits.
   */
  @ParameterizedTest
  @CsvSource({
    "-2, 60, 9, 1.32589218645308e-27",
    "-2, 12, 9, 2.15207632072744e-25",
    "2.1, 60, 9, 5.96288301610239e-12",
    "2.1, 0.5, 3, 0.175970366497244",
    "50, 0.3, 2, 0.706102313772830",
    "24, 1e6, 30, 9.91813180985860e-10",
    "26, 1000, 30, 2.71485449284562e-4",
    "-40, 3, -38, 0.560821593113256",
    "96, 1e6, 100, 3.29199649701682e-5",
    "5010, 1e6, 5000, 0.996705720427169",
  })
  void noncentralTFarOut(double t, double degrees, double noncentrality, double p) {
    assertThat(NoncentralT.cumulative(t, degrees, noncentrality)).isCloseTo(p, within(2e-9 * p));
  }

  /** Then Z - delta alone is left: R 4.2.2, pnorm(2.1, 3). */
  @Test
  void withInfinitelyManyDegreesOfFreedomItIsNormal() {
    assertThat(NoncentralT.cumulative(2.1, Double.POSITIVE_INFINITY, 3))
        .isCloseTo(0.18406012534676, within(1e-14));
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "NaN, 1", "5, 1e5", "5, NaN"})
  void noncentralTRefusesWhereItDoesNotHold(double degrees, double noncentrality) {
    assertThatThrownBy(() -> NoncentralT.cumulative(1, degrees, noncentrality))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void anEffectBeyondAllMeasureIsSureToBeFound() {
    assertThat(TPower.power(1e300, 2, 0.05)).isCloseTo(1, within(1e-12));
  }

  /** R 4.2.2: pt(t, df, ncp), which itself is good to nine decimals in the far tail. */
  @ParameterizedTest
  @CsvSource({
    "-2, 1, -1, 0.377128035539831",
    "-2, 1, 0, 0.147583617650433",
    "-2, 1, 0.8, 0.0457234028761272",
    "-2, 1, 3, 0.000149998326966938",
    "-2, 1, 9, 9.9475983006414e-14",
    "-2, 3.7, -1, 0.240698045520167",
    "-2, 3.7, 0, 0.060908600952617",
    "-2, 3.7, 0.8, 0.012681693804816",
    "-2, 3.7, 3, 1.40714419255561e-05",
    "-2, 3.7, 9, 2.38697950294409e-14",
    "-2, 12, -1, 0.187090717721921",
    "-2, 12, 0, 0.034327507019043",
    "-2, 12, 0.8, 0.00510472301942522",
    "-2, 12, 3, 1.77421529701238e-06",
    "-2, 12, 9, 1.22124532708767e-15",
    "-2, 60, -1, 0.164626352811824",
    "-2, 60, 0, 0.0250165218257287",
    "-2, 60, 0.8, 0.00300666369591862",
    "-2, 60, 3, 4.48710396172558e-07",
    "-2, 60, 9, 0",
    "0, 1, -1, 0.841344746068543",
    "0, 1, 0, 0.5",
    "0, 1, 0.8, 0.211855398583397",
    "0, 1, 3, 0.00134989803163009",
    "0, 1, 9, 1.12858840595384e-19",
    "0, 3.7, -1, 0.841344746068543",
    "0, 3.7, 0, 0.5",
    "0, 3.7, 0.8, 0.211855398583397",
    "0, 3.7, 3, 0.00134989803163009",
    "0, 3.7, 9, 1.12858840595384e-19",
    "0, 12, -1, 0.841344746068543",
    "0, 12, 0, 0.5",
    "0, 12, 0.8, 0.211855398583397",
    "0, 12, 3, 0.00134989803163009",
    "0, 12, 9, 1.12858840595384e-19",
    "0, 60, -1, 0.841344746068543",
    "0, 60, 0, 0.5",
    "0, 60, 0.8, 0.211855398583397",
    "0, 60, 3, 0.00134989803163009",
    "0, 60, 9, 1.12858840595384e-19",
    "0.5, 1, -1, 0.910367599135396",
    "0.5, 1, 0, 0.647583617650433",
    "0.5, 1, 0.8, 0.349136912199736",
    "0.5, 1, 3, 0.00678527219735222",
    "0.5, 1, 9, 8.24611375639399e-16",
    "0.5, 3.7, -1, 0.925866586928655",
    "0.5, 3.7, 0, 0.677332183340034",
    "0.5, 3.7, 0.8, 0.371617599163306",
    "0.5, 3.7, 3, 0.00635742167554038",
    "0.5, 3.7, 9, 2.74074177882705e-17",
    "0.5, 12, -1, 0.930858167763109",
    "0.5, 12, 0, 0.686941261887338",
    "0.5, 12, 0.8, 0.378751722243545",
    "0.5, 12, 3, 0.00625516342750845",
    "0.5, 12, 9, 1.28405368512206e-17",
    "0.5, 60, -1, 0.932721567221489",
    "0.5, 60, 0, 0.690548020281008",
    "0.5, 60, 0.8, 0.381414706326752",
    "0.5, 60, 3, 0.00621878680570826",
    "0.5, 60, 9, 1.00536216584855e-17",
    "2.1, 1, -1, 0.969554039752302",
    "2.1, 1, 0, 0.858536971878491",
    "2.1, 1, 0.8, 0.687158729588858",
    "2.1, 1, 3, 0.196976784942127",
    "2.1, 1, 9, 0.000109102523517415",
    "2.1, 3.7, -1, 0.992977230816368",
    "2.1, 3.7, 0, 0.945367647458888",
    "2.1, 3.7, 0.8, 0.824596825121733",
    "2.1, 3.7, 3, 0.201584933782292",
    "2.1, 3.7, 9, 5.74808438386144e-08",
    "2.1, 12, -1, 0.997666530188612",
    "2.1, 12, 0, 0.971227530632524",
    "2.1, 12, 0.8, 0.876522200816995",
    "2.1, 12, 3, 0.192442506466805",
    "2.1, 12, 9, 1.36734371007016e-10",
    "2.1, 60, -1, 0.998805472609616",
    "2.1, 60, 0, 0.980029117806803",
    "2.1, 60, 0.8, 0.897660406645487",
    "2.1, 60, 3, 0.186044492160727",
    "2.1, 60, 9, 5.96276638312925e-12",
    "6, 1, -1, 0.988976265673057",
    "6, 1, 0, 0.947431543288747",
    "6, 1, 0.8, 0.879469357044708",
    "6, 1, 3, 0.621822699535009",
    "6, 1, 9, 0.138982460292472",
    "6, 3.7, -1, 0.999748373222407",
    "6, 3.7, 0, 0.997517714349631",
    "6, 3.7, 0.8, 0.98967441902746",
    "6, 3.7, 3, 0.869740408088595",
    "6, 3.7, 9, 0.0820951895860857",
    "6, 12, -1, 0.999999011037538",
    "6, 12, 0, 0.999968916305676",
    "6, 12, 0.8, 0.999685125825131",
    "6, 12, 3, 0.969514159082326",
    "6, 12, 9, 0.0259581047595021",
    "6, 60, -1, 0.999999999687859",
    "6, 60, 0, 0.999999938565769",
    "6, 60, 0.8, 0.999997620302036",
    "6, 60, 3, 0.995610828969688",
    "6, 60, 9, 0.00409365337788229",
  })
  void noncentralTAsInR(double t, double degrees, double noncentrality, double p) {
    assertThat(NoncentralT.cumulative(t, degrees, noncentrality)).isCloseTo(p, within(1e-10));
  }

  @Test
  void twoShotsEachWhenTheEffectIsHuge() {
    assertThat(TPower.shotsEach(2, 1000, 1, 0.05, 0.9)).isEqualTo(2);
  }
}
