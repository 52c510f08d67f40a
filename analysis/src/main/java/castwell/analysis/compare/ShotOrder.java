package castwell.analysis.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * The order in which to shoot a plan: block after block, with every bow and arrow paired once in
 * each block, and each block shuffled so that the day's drift doesn't fall on one bow or arrow
 * alone.
 */
public final class ShotOrder {
  private ShotOrder() {}

  public record Turn(int block, String bow, String arrow) {}

  /**
   * @param blocks the number of shots for each bow with each arrow
   * @param seed the shuffle's seed; the same seed gives the same order
   */
  public static List<Turn> of(List<String> bows, List<String> arrows, int blocks, long seed) {
    Random random = new Random(seed);
    List<Turn> order = new ArrayList<>();
    for (int block = 1; block <= blocks; block++) {
      List<Turn> turns = new ArrayList<>();
      for (String bow : bows) {
        for (String arrow : arrows) {
          turns.add(new Turn(block, bow, arrow));
        }
      }
      Collections.shuffle(turns, random);
      order.addAll(turns);
    }
    return order;
  }
}
