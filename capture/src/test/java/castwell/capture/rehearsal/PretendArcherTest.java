package castwell.capture.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.unit.Units;
import castwell.capture.rehearsal.Listening.Heard;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PretendArcherTest {
  private static final long SEED = 20260502;

  private static Listening shooting(double mishapShare, Optional<RehearsalTags> tags) {
    return new Listening(
        new RehearsalSettings(SEED, "rehearsal-1", 7, 7, 20, 0.006, mishapShare), tags);
  }

  @Test
  void theTaggedBowGivesTheTaggedArrowTheSpeedOfTheVirtualMassLaw() {
    RehearsalBow bow = RehearsalRack.bow("Heron");
    RehearsalArrow arrow = RehearsalRack.arrow("Alder");
    List<Double> speeds =
        speedsMps(shooting(0, Optional.of(new RehearsalTags("Heron", "Alder"))).forSeconds(2000));
    assertThat(speeds.size()).isGreaterThan(150);
    double mean = speeds.stream().mapToDouble(s -> s).average().orElseThrow();
    // Klopsteg, Am. J. Phys. 11 (1943) 175; the tick rate may be off by 0.5 %
    double expected = Math.sqrt(2 * bow.energyJ() / (arrow.massKg() + bow.virtualMassKg()));
    assertThat(mean).isCloseTo(expected, within(0.006 * expected));
    double variance =
        speeds.stream().mapToDouble(s -> (s - mean) * (s - mean)).sum() / (speeds.size() - 1);
    assertThat(Math.sqrt(variance) / mean).isBetween(0.004, 0.008);
  }

  @Test
  void theLightIsBlockedForTheArrowsLength() {
    RehearsalArrow arrow = RehearsalRack.arrow("Oak");
    Listening range = shooting(0, Optional.of(new RehearsalTags("Wren", "Oak"))).forSeconds(300);
    List<Heard> edges = range.of('E');
    List<Double> speeds = speedsMps(range);
    for (int i = 0; i < speeds.size(); i++) {
      double blockedSeconds = (edges.get(4 * i + 2).number(6) - edges.get(4 * i).number(6)) / 2e6;
      assertThat(blockedSeconds * speeds.get(i)).isCloseTo(arrow.lengthM(), within(0.005));
    }
  }

  @Test
  void shootsEndsOfFiveOrSixAndFetchesThem() {
    List<Heard> edges = shooting(0, Optional.empty()).forSeconds(1000).of('E');
    List<Integer> ends = new ArrayList<>(List.of(1));
    for (int i = 4; i < edges.size(); i += 4) {
      boolean fetched = edges.get(i).micros() - edges.get(i - 4).micros() > 13e6;
      if (fetched) {
        ends.add(0);
      }
      ends.set(ends.size() - 1, ends.get(ends.size() - 1) + 1);
    }
    assertThat(ends.size()).isGreaterThan(10);
    assertThat(ends.subList(0, ends.size() - 1)).allMatch(n -> n == 5 || n == 6);
  }

  @Test
  void withEveryArrowAMishapEachKindComes() {
    Listening range = shooting(1, Optional.empty()).forSeconds(3000);
    assertThat(range.bad()).isPositive();
    assertThat(range.of('L')).isNotEmpty();
    List<Heard> edges = range.of('E');
    assertThat(edges).anyMatch(e -> e.fields()[5].equals("G"));
    long distinct = edges.stream().map(e -> e.number(3)).distinct().count();
    long highest = edges.stream().mapToLong(e -> e.number(3)).max().orElseThrow();
    assertThat(distinct).isLessThan(edges.size()).isLessThan(highest);
  }

  @Test
  void aFloodedGateSendsAtMost32EdgesInATenthOfASecond() {
    // Contract of the wire, sentence L
    Listening range = shooting(1, Optional.empty()).forSeconds(3000);
    List<Heard> edges = range.of('E');
    for (int i = 33; i < edges.size(); i++) {
      long ticks = edges.get(i).number(6) - edges.get(i - 33).number(6);
      long numbers = edges.get(i).number(3) - edges.get(i - 33).number(3);
      assertThat(numbers < 33 || ticks < 0 || ticks > 0.09 * 2e6).isTrue();
    }
    List<Heard> losses = range.of('L');
    for (int i = 1; i < losses.size(); i++) {
      assertThat(losses.get(i).micros() - losses.get(i - 1).micros()).isGreaterThan(80_000);
    }
  }

  @Test
  void sensiblePairsOfTheRackAreSafeAndPlausible() {
    // At least 8 grains a pound for a wooden bow: common practice, no source
    assertThat(
            Units.grainsPerPound(
                RehearsalRack.arrow("").massKg(), RehearsalRack.bow("").drawWeightN()))
        .isGreaterThan(8);
    int pairs = 0;
    for (RehearsalBow bow : RehearsalRack.bows()) {
      for (RehearsalArrow arrow : RehearsalRack.arrows()) {
        if (Units.grainsPerPound(arrow.massKg(), bow.drawWeightN()) >= 8) {
          assertThat(bow.speedMps(arrow) / Units.METRES_PER_FOOT).isBetween(120.0, 190.0);
          pairs++;
        }
      }
    }
    assertThat(pairs).isGreaterThan(15);
  }

  /** Front pair, by the nominal tick rate. */
  private static List<Double> speedsMps(Listening range) {
    List<Heard> edges = range.of('E');
    List<Double> speeds = new ArrayList<>();
    for (int i = 0; i + 3 < edges.size(); i += 4) {
      assertThat(edges.get(i).fields()[4] + edges.get(i + 1).fields()[4]).isEqualTo("AB");
      double seconds = (edges.get(i + 1).number(6) - edges.get(i).number(6)) / 2e6;
      speeds.add(RehearsalSettings.GATE_SPACING_M / seconds);
    }
    return speeds;
  }
}
