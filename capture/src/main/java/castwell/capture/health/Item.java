package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.view.health.Level;
import java.util.Optional;

/**
 * One thing that may be well or not.
 *
 * @param sentence says what is well, or what isn't
 * @param remedy says what to do about it
 */
public record Item(
    Subject subject, Level level, Optional<Measured> measured, Phrase sentence, Phrase remedy) {
  static final Phrase NOTHING = Phrase.of("health.nothing");

  public String name() {
    return subject.name();
  }

  Phrase title() {
    return subject.title();
  }

  static Item well(Subject subject, Phrase sentence) {
    return of(subject, Level.WELL, sentence, NOTHING);
  }

  static Item cantTell(Subject subject, Phrase sentence, Phrase remedy) {
    return of(subject, Level.CANT_TELL, sentence, remedy);
  }

  static Item attention(Subject subject, Phrase sentence, Phrase remedy) {
    return of(subject, Level.ATTENTION, sentence, remedy);
  }

  static Item bad(Subject subject, Phrase sentence, Phrase remedy) {
    return of(subject, Level.BAD, sentence, remedy);
  }

  /**
   * @param remedy is left out where the level is good
   */
  static Item of(Subject subject, Level level, Phrase sentence, Phrase remedy) {
    return new Item(
        subject, level, Optional.empty(), sentence, level == Level.WELL ? NOTHING : remedy);
  }

  Item with(Measured figure) {
    return new Item(subject, level, Optional.of(figure), sentence, remedy);
  }
}
