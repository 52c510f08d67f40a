package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.view.health.Level;
import java.util.Optional;

/**
 * One thing that may be well or not.
 *
 * @param sentence what is well, or isn't
 * @param remedy what to do
 */
public record Item(
    String name, Level level, Optional<Measured> measured, Phrase sentence, Phrase remedy) {
  static final Phrase NOTHING = Phrase.of("health.nothing");

  /** Its name as people are told it. */
  Phrase title() {
    if (name.startsWith("light ")) {
      return Phrase.of("health.title_light", name.substring("light ".length()));
    }
    String key = name.startsWith("fault") ? "faults" : name.replaceAll("[^a-z]+", "_");
    return Phrase.of("health.title_" + key);
  }

  static Item well(String name, Phrase sentence) {
    return of(name, Level.WELL, sentence, NOTHING);
  }

  static Item cantTell(String name, Phrase sentence, Phrase remedy) {
    return of(name, Level.CANT_TELL, sentence, remedy);
  }

  static Item attention(String name, Phrase sentence, Phrase remedy) {
    return of(name, Level.ATTENTION, sentence, remedy);
  }

  static Item bad(String name, Phrase sentence, Phrase remedy) {
    return of(name, Level.BAD, sentence, remedy);
  }

  /**
   * @param remedy for when it isn't well
   */
  static Item of(String name, Level level, Phrase sentence, Phrase remedy) {
    return new Item(
        name, level, Optional.empty(), sentence, level == Level.WELL ? NOTHING : remedy);
  }

  Item with(Measured figure) {
    return new Item(name, level, Optional.of(figure), sentence, remedy);
  }
}
