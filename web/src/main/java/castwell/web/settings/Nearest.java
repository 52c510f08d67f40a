package castwell.web.settings;

import java.util.Collection;
import java.util.Comparator;

/** The word that takes the fewest strokes to get to. */
final class Nearest {
  private Nearest() {}

  /**
   * @param words at least one
   */
  static String of(String word, Collection<String> words) {
    return words.stream().min(Comparator.comparingInt(w -> distance(word, w))).orElseThrow();
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
