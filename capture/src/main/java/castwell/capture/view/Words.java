package castwell.capture.view;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Finds the word by which a constant is written: its name in small letters, or the word that it
 * gives itself.
 */
public final class Words {
  private Words() {}

  /** An enum whose words aren't its constants' names. */
  public interface Worded {
    String word();
  }

  public static String of(Enum<?> constant) {
    return constant instanceof Worded worded
        ? worded.word()
        : constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The words of all constants of a class. */
  public static List<String> all(Class<?> enumClass) {
    return Arrays.stream(enumClass.getEnumConstants()).map(c -> of((Enum<?>) c)).toList();
  }
}
