package castwell.analysis.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * What to shoot in which order: block after block, every bow with every arrow once in a block, each
 * block shuffled, so that the day's drift doesn't land on one of them.
 */
public final class ShotOrder {
  private ShotOrder() {}

  public record Turn(int block, String bow, String arrow) {}

  /**
   * @param blocks shots for each bow with each arrow
   * @param seed the same one gives the same order
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
