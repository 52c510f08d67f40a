package castwell.capture.health;

import castwell.analysis.wording.Phrase;

/**
 * What an item is about.
 *
 * @param name its name for programs
 * @param title its name for people
 */
record Subject(String name, Phrase title) {

  static Subject of(String name, String titleKey, Object... values) {
    return new Subject(name, Phrase.of(titleKey, values));
  }
}
