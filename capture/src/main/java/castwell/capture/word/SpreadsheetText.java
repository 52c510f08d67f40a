package castwell.capture.word;

import java.util.regex.Pattern;

/**
 * Guards text in CSV cells. Text that a spreadsheet would take for a formula gets an apostrophe in
 * front, which spreadsheets know as "this is text"; reading takes it away again. Text that begins
 * with apostrophes and then looks like a formula gets one more, so that every text comes back as it
 * was.
 *
 * <p>The beginnings are those of OWASP, "CSV Injection": = + - @, tab, carriage return, line feed,
 * and the full-width forms. They are found behind spaces too, since some programs trim. Numbers
 * aren't text, and keep their minus as it is.
 */
public final class SpreadsheetText {
  private static final String FORMULA = "[\\s']*[=+@\\-\\t\\r\\n＝＋－＠]";

  private static final Pattern GUARDED = Pattern.compile("^'" + FORMULA);
  private static final Pattern LOOKS_LIKE_FORMULA = Pattern.compile("^" + FORMULA);

  private SpreadsheetText() {}

  public static String guarded(String text) {
    return LOOKS_LIKE_FORMULA.matcher(text).lookingAt() ? "'" + text : text;
  }

  public static String unguarded(String cell) {
    return GUARDED.matcher(cell).lookingAt() ? cell.substring(1) : cell;
  }
}
