package castwell.web.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The scripts say what the file of texts says, and nothing of their own. */
class ScriptWordsTest {
  private static final Map<String, String> TEXTS = Texts.english().all("live.");
  private static final Pattern ASKED = Pattern.compile("\\btext\\(\\s*'([^']*)'\\s*[,)]");
  private static final Pattern ANY_ASKED = Pattern.compile("(?<!\\.|\\w|function )text\\(");
  private static final Pattern WORD = Pattern.compile("[\"(]?[A-Za-z][A-Za-z'-]+[.,:;?!)\"]*");

  /** A word where an element's content stands. */
  private static final Pattern CONTENT =
      Pattern.compile("\\b(?:el|svg)\\('\\w+', \\{[^{}]*}, ['`\"][A-Za-z]");

  /** Class names, selectors, a choice's value, one word of the API: nothing that a person reads. */
  private static final Set<String> NOT_READ =
      Set.of(
          "can't tell",
          "choices ticks",
          "in order",
          "mark area " + ScriptWords.EXPRESSION,
          "mark area outline " + ScriptWords.EXPRESSION,
          "mark area " + ScriptWords.EXPRESSION + " " + ScriptWords.EXPRESSION,
          "mark line " + ScriptWords.EXPRESSION,
          "main button",
          "form, details",
          "input, textarea, select",
          "input, select, textarea, dialog");

  private static Set<String> asked() throws IOException {
    return TextsTest.in(ScriptWords.scripts(), ASKED);
  }

  @Test
  void whateverAScriptAsksForIsThereAndNothingElse() throws IOException {
    assertThat(asked()).hasSizeGreaterThan(150).isEqualTo(TEXTS.keySet());
  }

  /** So that the check above sees every one of them. */
  @Test
  void everyKeyStandsWholeWhereItIsAskedFor() throws IOException {
    for (Path script : ScriptWords.scripts()) {
      String code = Files.readString(script);
      assertThat(ANY_ASKED.matcher(code).results().count())
          .as(script.toString())
          .isEqualTo(ASKED.matcher(code).results().count());
    }
  }

  @Test
  void aKeyIsNamedByAScriptThatThereIs() throws IOException {
    List<String> names =
        ScriptWords.scripts().stream().map(s -> s.getFileName().toString()).toList();
    assertThat(TEXTS.keySet())
        .allSatisfy(key -> assertThat(names).contains(key.split("\\.")[1] + ".js"));
  }

  @Test
  void noScriptHoldsASentenceOfItsOwn() throws IOException {
    List<String> found = new ArrayList<>();
    for (Path script : ScriptWords.scripts()) {
      String code = Files.readString(script);
      for (String literal : ScriptWords.literals(code)) {
        if (words(literal) > 1 && !NOT_READ.contains(literal)) {
          found.add(script.getFileName() + ": " + literal);
        }
      }
      CONTENT.matcher(code).results().forEach(r -> found.add(script.getFileName() + r.group()));
    }
    assertThat(found).isEmpty();
  }

  private static long words(String literal) {
    return Arrays.stream(literal.strip().split("[\\s" + ScriptWords.EXPRESSION + "]+"))
        .filter(word -> WORD.matcher(word).matches())
        .count();
  }

  @Test
  void literalsAreFoundInCommentsNot() {
    String script =
        """
        // it's a comment
        /* "so" is this */ const a = 'an \\'a'; say("two words", `${a ? `in ${b('it')} here` : ''} out`);
        """;
    assertThat(ScriptWords.literals(script))
        .containsExactly("an \\'a", "two words", "it", "in \uFFFC here", "", "\uFFFC out");
    assertThat(words("\uFFFC two words")).isEqualTo(2);
    assertThat(words("from \uFFFC to")).isEqualTo(2);
    assertThat(words("M0 9H34")).isZero();
  }
}
