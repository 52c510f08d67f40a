package castwell.analysis.wording;

import java.util.List;
import java.util.stream.Collectors;

/** A language to tell phrases in. */
@FunctionalInterface
public interface Wording {
  String say(Phrase phrase);

  /** The phrases one after the other, with a space between. */
  default String say(List<Phrase> phrases) {
    return phrases.stream().map(this::say).collect(Collectors.joining(" "));
  }
}
