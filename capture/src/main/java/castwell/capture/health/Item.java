package castwell.capture.health;

import java.util.Optional;

/**
 * One thing that may be well or not.
 *
 * @param sentence what is well, or isn't
 * @param remedy what to do
 */
public record Item(
    String name, Level level, Optional<Measured> measured, String sentence, String remedy) {
  private static final String NOTHING = "Nothing to do.";

  static Item well(String name, String sentence) {
    return of(name, Level.WELL, sentence, NOTHING);
  }

  static Item cantTell(String name, String sentence, String remedy) {
    return of(name, Level.CANT_TELL, sentence, remedy);
  }

  static Item attention(String name, String sentence, String remedy) {
    return of(name, Level.ATTENTION, sentence, remedy);
  }

  static Item bad(String name, String sentence, String remedy) {
    return of(name, Level.BAD, sentence, remedy);
  }

  /**
   * @param remedy for when it isn't well
   */
  static Item of(String name, Level level, String sentence, String remedy) {
    return new Item(
        name, level, Optional.empty(), sentence, level == Level.WELL ? NOTHING : remedy);
  }

  Item with(Measured figure) {
    return new Item(name, level, Optional.of(figure), sentence, remedy);
  }
}
