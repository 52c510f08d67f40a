package castwell.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.bow.BowCells;
import castwell.analysis.compare.WhatMoved.Answer;
import castwell.analysis.uncertainty.Quantity;
import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is recognised, how often, in reworks made by the model with a seeded scatter. */
class WhatMovedTest {
  private static final int REWORKS = 400;

  private final long seed = Long.getLong("castwell.seed", System.nanoTime());
  private final Random random = new Random(seed);

  private Map<Answer, Integer> answers(double energyAfter, double virtualAfter, int shots) {
    Map<Answer, Integer> answers = new EnumMap<>(Answer.class);
    for (int i = 0; i < REWORKS; i++) {
      var before = new BowCells("before", Made.bow("d1", 30, 150, 0.9, shots, random));
      var after =
          new BowCells("after", Made.bow("d2", energyAfter, virtualAfter, 0.9, shots, random));
      Answer answer =
          WhatMoved.between(
                  before.virtualMass().orElseThrow(),
                  after.virtualMass().orElseThrow(),
                  Quantity.exact(1))
              .answer();
      answers.merge(answer, 1, Integer::sum);
    }
    System.out.println("WhatMovedTest seed " + seed + ", " + shots + " shots: " + answers);
    return answers;
  }

  @Test
  void aLighterTipIsRecognisedWithEnoughShots() {
    Map<Answer, Integer> answers = answers(30, 130, 60);

    assertThat(answers.get(Answer.VIRTUAL_MASS)).as("seed %d", seed).isGreaterThan(REWORKS * 3 / 4);
  }

  @Test
  void tooFewShotsCantTell() {
    Map<Answer, Integer> answers = answers(30, 140, 4);

    assertThat(
            answers.getOrDefault(Answer.SOMETHING, 0)
                + answers.getOrDefault(Answer.NOTHING_SHOWN, 0))
        .as("seed %d", seed)
        .isGreaterThan(REWORKS * 3 / 4);
  }

  @Test
  void nothingDoneIsSeldomTakenForAChange() {
    Map<Answer, Integer> answers = answers(30, 150, 5);

    assertThat(answers.get(Answer.NOTHING_SHOWN))
        .as("seed %d", seed)
        .isGreaterThan(REWORKS * 92 / 100);
  }

  /** Both the energy's sides: a bow that hands over more, its limbs as heavy as before. */
  @Test
  void moreEnergyIsRecognisedWithEnoughShots() {
    Map<Answer, Integer> answers = answers(32, 150, 60);

    assertThat(answers.get(Answer.ENERGY)).as("seed %d", seed).isGreaterThan(REWORKS * 3 / 4);
  }
}
