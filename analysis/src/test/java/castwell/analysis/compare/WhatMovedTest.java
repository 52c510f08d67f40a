package castwell.analysis.compare;

import static castwell.analysis.compare.WhatMoved.Answer.BOTH;
import static castwell.analysis.compare.WhatMoved.Answer.ENERGY;
import static castwell.analysis.compare.WhatMoved.Answer.NOTHING_SHOWN;
import static castwell.analysis.compare.WhatMoved.Answer.SOMETHING;
import static castwell.analysis.compare.WhatMoved.Answer.VIRTUAL_MASS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.Seed;
import castwell.analysis.bow.BowSums;
import castwell.analysis.bow.VirtualMass;
import castwell.analysis.compare.WhatMoved.Answer;
import castwell.analysis.uncertainty.Quantity;
import castwell.analysis.uncertainty.Source;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is recognised, how often, in reworks made by the model with a seeded scatter. */
@Tag("slow")
class WhatMovedTest {
  private static final int REWORKS = 4000;

  private final long seed = Seed.of(WhatMovedTest.class);
  private final Random random = new Random(seed);

  private Map<Answer, Integer> answers(double energyAfter, double virtualAfter, int shots) {
    Map<Answer, Integer> answers = new EnumMap<>(Answer.class);
    for (int i = 0; i < REWORKS; i++) {
      var before = BowSums.of("before", Made.bow("d1", 30, 150, 0.9, shots, random));
      var after =
          BowSums.of("after", Made.bow("d2", energyAfter, virtualAfter, 0.9, shots, random));
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

  private static double share(Map<Answer, Integer> answers, Answer... wanted) {
    return Arrays.stream(wanted).mapToInt(a -> answers.getOrDefault(a, 0)).sum() / (double) REWORKS;
  }

  /**
   * Tips lighter by 20 gr of virtual mass: half of such reworks are recognised from about 9 shots a
   * cell on, three quarters from 16, nine in ten from 25.
   */
  @Test
  void aLighterTipIsRecognisedWithEnoughShots() {
    Map<Answer, Integer> answers = answers(30, 130, 25);

    assertThat(share(answers, VIRTUAL_MASS)).as("seed %d", seed).isGreaterThan(0.85);
    assertThat(share(answers, ENERGY, BOTH)).as("seed %d", seed).isLessThan(0.08);
  }

  /** Something moved, say five shots a cell, but mostly not which. */
  @Test
  void aLighterTipCantBeToldFromEnergyWithFewShots() {
    Map<Answer, Integer> answers = answers(30, 130, 5);

    assertThat(share(answers, SOMETHING, NOTHING_SHOWN)).as("seed %d", seed).isGreaterThan(0.58);
    assertThat(share(answers, ENERGY, BOTH)).as("seed %d", seed).isLessThan(0.08);
  }

  @Test
  void aSmallerChangeCantBeToldWithFewerShots() {
    Map<Answer, Integer> answers = answers(30, 140, 4);

    assertThat(share(answers, SOMETHING, NOTHING_SHOWN)).as("seed %d", seed).isGreaterThan(0.75);
  }

  @Test
  void moreEnergyIsRecognisedWithEnoughShots() {
    Map<Answer, Integer> answers = answers(32, 150, 25);

    assertThat(share(answers, ENERGY)).as("seed %d", seed).isGreaterThan(0.85);
    assertThat(share(answers, VIRTUAL_MASS, BOTH)).as("seed %d", seed).isLessThan(0.08);
  }

  /** At most 5 %, and what a simulation of this size may be off by. */
  @ParameterizedTest
  @ValueSource(ints = {2, 5, 20})
  void nothingDoneIsSeldomTakenForAChange(int shots) {
    Map<Answer, Integer> answers = answers(30, 150, shots);

    assertThat(share(answers, NOTHING_SHOWN)).as("seed %d", seed).isGreaterThan(0.95 - 0.018);
  }

  /** A day that made all speeds 3 % lower would pass for lost energy, if controls didn't tell. */
  @Test
  void whatTheControlsSayOfTheDayIsTakenOut() {
    VirtualMass before = bow("before", 40, 0.2, 0.0100);
    VirtualMass after = bow("after", 40 * 0.97 * 0.97, 0.2, 0.0101);
    Quantity ratio = Quantity.of(0.97, 0.001, Source.own("controls"));

    assertThat(WhatMoved.between(before, after, Quantity.exact(1)).answer()).isEqualTo(ENERGY);
    WhatMoved corrected = WhatMoved.between(before, after, ratio);
    assertThat(corrected.answer()).isEqualTo(NOTHING_SHOWN);
    assertThat(corrected.energyJ().value()).isCloseTo(0, within(1e-12));
    // By hand: 2 x 40 J x 0.001 / 0.97 by the ratio, and both fits' 0.2 J.
    assertThat(corrected.energyJ().standardUncertainty())
        .isCloseTo(Math.sqrt(Math.pow(.08 / .97, 2) + .04 + .04 / Math.pow(.97, 4)), within(1e-9));
  }

  /** A control's lone shot says nothing of the day, hence nothing of E; K needs no control. */
  @Test
  void aDayWithoutBoundsLeavesTheVirtualMass() {
    Quantity ratio = Quantity.of(1, Double.POSITIVE_INFINITY, Source.own("a lone shot"));

    assertThat(
            WhatMoved.between(bow("before", 40, 0.2, 0.02), bow("after", 40, 0.2, 0.01), ratio)
                .answer())
        .isEqualTo(VIRTUAL_MASS);
  }

  private static VirtualMass bow(String name, double energyJ, double energyU, double virtualKg) {
    return new VirtualMass(
        Quantity.of(energyJ, energyU, Source.own(name + ", energy")),
        Quantity.of(virtualKg, 0.0002, Source.own(name + ", virtual mass")));
  }
}
