package castwell.capture.health;

import castwell.analysis.wording.Phrase;

/**
 * What an item is about.
 *
 * @param name by which programs know it
 * @param title as people are told it
 */
record Subject(String name, Phrase title) {

  static Subject of(String name, String titleKey, Object... values) {
    return new Subject(name, Phrase.of(titleKey, values));
  }
}
