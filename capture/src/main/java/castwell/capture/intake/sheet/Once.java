package castwell.capture.intake.sheet;

import java.util.HashMap;
import java.util.Map;

/** Refuses a second line about the same thing, since nobody could say which of the two holds. */
public final class Once {
  private final Map<String, Integer> lines = new HashMap<>();

  /**
   * @param key identifies the thing
   * @param name its name in a sentence
   */
  public void refuseTwice(Line line, String key, String name) {
    Integer before = lines.putIfAbsent(key, line.number());
    if (before != null) {
      throw new CantRead("sheet.twice", before, name);
    }
  }
}
