package castwell.analysis.reading;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * How well edges are read under every disturbance: {@code sh .ci/measure reading}, of so many
 * passages each.
 */
class DisturbancesMeasured {
  private static final int EACH = Integer.getInteger("castwell.passages", 420);

  @Test
  void whateverDisturbsThem() {
    long seed = Seed.of(DisturbancesMeasured.class);
    Map<Disturbance, Score> scores = new LinkedHashMap<>();
    List<Disturbance> all = Disturbance.all();
    all.parallelStream()
        .map(d -> Map.entry(d, Score.of(d, EACH, seed)))
        .toList()
        .forEach(e -> scores.put(e.getKey(), e.getValue()));
    System.out.println(
        "| disturbance | counted | within 2.5 u | median u | wrongly counted | tried |");
    System.out.println("|---|---|---|---|---|---|");
    scores.forEach((disturbance, score) -> System.out.println(row(disturbance.name(), score)));
    Score sum = sum(scores, false);
    System.out.println(row("all but mimics", sum));
    System.out.printf("Counted beside arrows that are told: %d%n", sum.beside);

    assertThat(sum.counted).as("counted").isGreaterThanOrEqualTo((int) (0.995 * sum.told));
    assertThat(sum.within).as("within").isGreaterThanOrEqualTo((int) (0.98 * sum.judged));
    assertThat(sum.wrong).as("wrongly").isLessThanOrEqualTo((int) Math.ceil(0.001 * sum.none));
  }

  private static Score sum(Map<Disturbance, Score> scores, boolean mimics) {
    return scores.entrySet().stream()
        .filter(entry -> entry.getKey().mimics() == mimics)
        .map(Map.Entry::getValue)
        .reduce(new Score(), Score::plus);
  }

  private static String row(String name, Score score) {
    return "| %s | %s | %s | %s | %s | %d |"
        .formatted(
            name,
            percent(score.counted, score.told),
            percent(score.within, score.judged),
            score.judged == 0 ? "" : "%.2f %%".formatted(100 * score.medianU()),
            percent(score.wrong, score.none),
            score.mostTried);
  }

  private static String percent(int part, int whole) {
    return whole == 0 ? "" : "%.2f %%".formatted(100.0 * part / whole);
  }
}
