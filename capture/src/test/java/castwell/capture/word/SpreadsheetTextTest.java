package castwell.capture.word;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadsheetTextTest {
  /** OWASP, "CSV Injection": what a formula may begin with. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "\n=1",
        " =1",
        "＝1",
        "＋1",
        "－1",
        "＠1",
        "=cmd|' /C calc'!A0",
        "-",
        "'=1",
        "' =1"
      })
  void whatLooksLikeAFormulaGetsAnApostropheAndLosesItAgain(String text) {
    assertThat(SpreadsheetText.guarded(text)).isEqualTo("'" + text);
    assertThat(SpreadsheetText.unguarded("'" + text)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Ash", "52 lb @ 27 in", "'twas windy", "'", "a=b", "2026-05-01"})
  void whatDoesNotStaysAsItIs(String text) {
    assertThat(SpreadsheetText.guarded(text)).isEqualTo(text);
    assertThat(SpreadsheetText.unguarded(text)).isEqualTo(text);
  }

  @Test
  void everyTextComesBack() {
    long seed = Seed.of(SpreadsheetTextTest.class);
    Random random = new Random(seed);
    String signs = "''==+-@ \t\r\nab1＝";
    for (int i = 0; i < 100_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int n = random.nextInt(6); n > 0; n--) {
        text.append(signs.charAt(random.nextInt(signs.length())));
      }
      String guarded = SpreadsheetText.guarded(text.toString());
      assertThat(SpreadsheetText.unguarded(guarded)).isEqualTo(text.toString());
      assertThat(guarded).doesNotMatch("(?s)[=+@\\-\\t\\r＝].*");
    }
  }
}
