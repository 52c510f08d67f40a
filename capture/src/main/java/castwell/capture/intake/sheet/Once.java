package castwell.capture.intake.sheet;

import java.util.HashMap;
import java.util.Map;

/** Refuses a second line about the same thing: who could say which one holds? */
public final class Once {
  private final Map<String, Integer> lines = new HashMap<>();

  /**
   * @param key of the thing
   * @param name by which a sentence tells it
   */
  public void refuseTwice(Line line, String key, String name) {
    Integer before = lines.putIfAbsent(key, line.number());
    if (before != null) {
      throw new CantRead("sheet.twice", before, name);
    }
  }
}
