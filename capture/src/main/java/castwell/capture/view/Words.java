package castwell.capture.view;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** How a constant is written: its name in small letters, or the word that it gives itself. */
public final class Words {
  private Words() {}

  /** Implemented by those enums whose words aren't their names. */
  public interface Worded {
    String word();
  }

  public static String of(Enum<?> constant) {
    return constant instanceof Worded worded
        ? worded.word()
        : constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** All that a constant of a class may be. */
  public static List<String> all(Class<?> enumClass) {
    return Arrays.stream(enumClass.getEnumConstants()).map(c -> of((Enum<?>) c)).toList();
  }
}
