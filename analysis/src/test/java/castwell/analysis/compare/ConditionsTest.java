package castwell.analysis.compare;

import static castwell.analysis.unit.Units.KILOGRAMS_PER_GRAIN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.compare.Conditions.Difference;
import castwell.analysis.compare.Conditions.What;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ConditionsTest {
  private static final double VIRTUAL_MASS_KG = 0.01;

  private static Conditions conditions(double gates, double celsius, double humidity) {
    return new Conditions(
        OptionalDouble.of(gates),
        OptionalDouble.of(celsius),
        OptionalDouble.of(humidity),
        OptionalDouble.empty());
  }

  private static double effect(List<Difference> found, What what) {
    return found.stream()
        .filter(difference -> difference.what().equals(what))
        .findFirst()
        .orElseThrow()
        .relativeSpeed()
        .orElseThrow();
  }

  /** The trade's figures: 20 degrees Fahrenheit or 1 % moisture are about 1 %. */
  @Test
  void twentyDegreesFahrenheitAreAboutOnePercent() {
    List<Difference> found =
        conditions(3, 20 + 20 / 1.8, 0.5).since(conditions(3, 20, 0.5), 0.03, VIRTUAL_MASS_KG);

    assertThat(effect(found, What.TEMPERATURE)).isCloseTo(-0.01, within(0.002));
  }

  /** Between 30 and 65 % humidity, at 70 degrees Fahrenheit, lie 6.2 and 12.0 % (Wood Handbook). */
  @Test
  void damperAirMakesSlowerWood() {
    double celsius = (70 - 32) / 1.8;
    List<Difference> found =
        conditions(3, celsius, 0.65).since(conditions(3, celsius, 0.30), 0.03, VIRTUAL_MASS_KG);

    assertThat(effect(found, What.MOISTURE)).isCloseTo(-0.05, within(0.01));
  }

  /** 0.15 to 0.3 % a metre, common practice. */
  @Test
  void gatesFartherAwaySeeSlowerArrows() {
    List<Difference> found =
        conditions(4, 20, 0.5).since(conditions(3, 20, 0.5), 0.0324, VIRTUAL_MASS_KG);

    assertThat(effect(found, What.GATES)).isBetween(-0.003, -0.0015);
  }

  @Test
  void whatIsntKnownIsSaid() {
    OptionalDouble none = OptionalDouble.empty();
    Conditions unknown = new Conditions(none, none, none, none);

    assertThat(unknown.since(unknown, 0.03, VIRTUAL_MASS_KG))
        .hasSize(4)
        .allMatch(difference -> difference.by().isEmpty())
        .allMatch(difference -> difference.relativeSpeed().isEmpty());
  }

  /**
   * Hickman, "Effect of String Weight on Arrow Velocity and Efficiency of Bows", in Hickman, Nagler
   * and Klopsteg, Archery: the Technical Side (1947): a yew bow throws 400 gr at 155 ft/s with a
   * string of 108 gr and at 148 with one of 254; K is 188.2 gr by its 68 % with the former.
   */
  @Test
  void aHeavierStringCostsWhatHickmanFound() {
    double yew = 188.2 * KILOGRAMS_PER_GRAIN;
    double effect =
        effect(string(254).since(string(108), 400 * KILOGRAMS_PER_GRAIN, yew), What.STRING);

    assertThat(155 * (1 + effect)).isCloseTo(148, within(1.0));
  }

  private static Conditions string(double grains) {
    OptionalDouble none = OptionalDouble.empty();
    return new Conditions(none, none, none, OptionalDouble.of(grains * KILOGRAMS_PER_GRAIN));
  }

  @Test
  void differencesSayWhichWay() {
    List<Difference> found =
        conditions(2.5, 12, 0.5).since(conditions(3, 20, 0.5), 0.03, VIRTUAL_MASS_KG);
    assertThat(by(found, What.TEMPERATURE)).isEqualTo(-8);
    assertThat(effect(found, What.TEMPERATURE)).isPositive();
    assertThat(by(found, What.GATES)).isEqualTo(-0.5);
    assertThat(effect(found, What.GATES)).isPositive();
  }

  private static double by(List<Difference> found, What what) {
    return found.stream()
        .filter(difference -> difference.what() == what)
        .findFirst()
        .orElseThrow()
        .by()
        .orElseThrow();
  }

  @Test
  void whatIsAlikeIsNoDifference() {
    assertThat(conditions(3, 20, 0.5).since(conditions(3 + 1e-9, 20, 0.5), 0.03, VIRTUAL_MASS_KG))
        .extracting(Difference::what)
        .containsExactly(What.STRING);
  }
}
