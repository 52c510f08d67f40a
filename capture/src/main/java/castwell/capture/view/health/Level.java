package castwell.capture.view.health;

import castwell.capture.view.Words.Worded;
import com.fasterxml.jackson.annotation.JsonCreator;
import java.util.Arrays;
import java.util.Locale;

/** How well something is, from the best to the worst. */
public enum Level implements Worded {
  WELL,
  CANT_TELL,
  ATTENTION,
  BAD;

  @Override
  public String word() {
    return this == CANT_TELL ? "can't tell" : name().toLowerCase(Locale.ROOT);
  }

  @JsonCreator
  static Level of(String word) {
    return Arrays.stream(values())
        .filter(level -> level.word().equals(word))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("There is no level \"" + word + "\"."));
  }
}
