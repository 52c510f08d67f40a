package castwell.capture.word;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that is fewest keystrokes away, regardless of case. */
public final class Nearest {
  private Nearest() {}

  /**
   * @param words at least one
   */
  public static String of(String word, Collection<String> words) {
    return words.stream().min(Comparator.comparingInt(w -> strokes(word, w))).orElseThrow();
  }

  /**
   * The word that was probably meant; empty where even the nearest differs in more than a third of
   * its letters, which is no slip.
   */
  public static Optional<String> meant(String word, Collection<String> words) {
    return words.stream()
        .min(Comparator.comparingInt(w -> strokes(word, w)))
        .filter(w -> strokes(word, w) <= Math.max(1, w.length() / 3));
  }

  private static int strokes(String word, String other) {
    return distance(word.toLowerCase(Locale.ROOT), other.toLowerCase(Locale.ROOT));
  }

  /** Levenshtein's edit distance (Soviet Physics Doklady 10 (1966) 707). */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int substituted = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(substituted, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[b.length()];
  }
}
