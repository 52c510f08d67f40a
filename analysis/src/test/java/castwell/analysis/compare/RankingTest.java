package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.compare.Ranking.Entry;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** By hand: normal quantiles and Holm's rule over three pairs. */
class RankingTest {
  private static Entry entry(String bow, double cast, double u) {
    return new Entry(
        bow,
        Quantity.of(cast, u, Source.own(bow)).plus(Quantity.of(0, 0.5, Source.common("gates"))));
  }

  @Test
  void neighboursThatOverlapShareAGroup() {
    Ranking ranking =
        Ranking.of(List.of(entry("c", 45, 0.2), entry("a", 46, 0.2), entry("b", 45.5, 0.2)));

    assertThat(ranking.bows()).extracting(Entry::bow).containsExactly("a", "b", "c");
    assertThat(ranking.pairs())
        .extracting(p -> p.faster() + p.slower(), Ranking.Pair::differs)
        .containsExactlyInAnyOrder(
            org.assertj.core.groups.Tuple.tuple("ab", false),
            org.assertj.core.groups.Tuple.tuple("ac", true),
            org.assertj.core.groups.Tuple.tuple("bc", false));
    assertThat(ranking.groups()).containsExactly(List.of("a", "b"), List.of("b", "c"));
  }

  /** 1 / sqrt(0.08) = 3.5355 standard uncertainties: p 4.07e-4 by the usual tables, times three. */
  @Test
  void whatTheGatesHaveInCommonCancelsAndHolmCounts() {
    Ranking ranking =
        Ranking.of(List.of(entry("a", 46, 0.2), entry("b", 45.5, 0.2), entry("c", 45, 0.2)));

    Ranking.Pair ac =
        ranking.pairs().stream().filter(p -> p.slower().equals("c")).findFirst().orElseThrow();
    assertThat(ac.differenceMps().standardUncertainty()).isCloseTo(Math.sqrt(.08), within(1e-12));
    assertThat(ac.adjustedP()).isCloseTo(3 * 4.07e-4, within(3 * 1e-6));
  }

  @Test
  void bowsFarApartStandAlone() {
    Ranking ranking = Ranking.of(List.of(entry("a", 50, 0.1), entry("b", 45, 0.1)));

    assertThat(ranking.groups()).containsExactly(List.of("a"), List.of("b"));
  }

  @Test
  void noBowsAreNoGroups() {
    assertThat(Ranking.of(List.of()).groups()).isEmpty();
  }

  /** By trying every set of bows: those without a pair that differs, within no larger such set. */
  @Test
  void groupsAreTheLargestSetsThatCantBeToldApart() {
    long seed = Seed.of(RankingTest.class);
    Random random = new Random(seed);
    for (int i = 0; i < 300; i++) {
      List<Entry> entries = new ArrayList<>();
      for (int bow = 0; bow < 7; bow++) {
        entries.add(entry("bow " + bow, 45 + random.nextDouble(), 0.02 + random.nextDouble() / 5));
      }
      Ranking ranking = Ranking.of(entries);

      assertThat(ranking.groups().stream().map(Set::copyOf))
          .as("seed %d, rack %d", seed, i)
          .containsExactlyInAnyOrderElementsOf(largest(ranking));
    }
  }

  private static List<Set<String>> largest(Ranking ranking) {
    List<Set<String>> alike = new ArrayList<>();
    for (int bits = 1; bits < 1 << ranking.bows().size(); bits++) {
      Set<String> some = new HashSet<>();
      for (int bow = 0; bow < ranking.bows().size(); bow++) {
        if ((bits >> bow & 1) == 1) {
          some.add(ranking.bows().get(bow).bow());
        }
      }
      if (ranking.pairs().stream()
          .noneMatch(p -> p.differs() && some.containsAll(Set.of(p.faster(), p.slower())))) {
        alike.add(some);
      }
    }
    return alike.stream()
        .filter(
            set ->
                alike.stream()
                    .noneMatch(other -> other.size() > set.size() && other.containsAll(set)))
        .toList();
  }
}
