package castwell.web.text;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The literals of a script (ECMAScript 2024, 12.9.4 and 12.9.6): comments left out, each template's
 * expressions replaced by a place holder and read for their own literals.
 */
final class ScriptWords {
  static final String EXPRESSION = "\uFFFC";

  private final String script;
  private final List<String> literals = new ArrayList<>();
  private int at;

  private ScriptWords(String script) {
    this.script = script;
  }

  static List<Path> scripts() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("src/main/resources/castwell/web/page"))) {
      return files.filter(file -> file.toString().endsWith(".js")).sorted().toList();
    }
  }

  static List<String> literals(String script) {
    ScriptWords words = new ScriptWords(script);
    words.code(0);
    return words.literals;
  }

  /** Up to the brace that ends an expression, or to the script's end. */
  private void code(int depth) {
    int open = depth;
    while (at < script.length()) {
      char c = script.charAt(at);
      if (script.startsWith("//", at)) {
        skipPast("\n");
      } else if (script.startsWith("/*", at)) {
        skipPast("*/");
      } else if (c == '\'' || c == '"' || c == '`') {
        at++;
        literal(c);
      } else {
        at++;
        open += c == '{' ? 1 : c == '}' ? -1 : 0;
        if (depth > 0 && open == 0) {
          return;
        }
      }
    }
  }

  private void skipPast(String end) {
    int found = script.indexOf(end, at);
    at = found < 0 ? script.length() : found + end.length();
  }

  private void literal(char quote) {
    StringBuilder text = new StringBuilder();
    while (script.charAt(at) != quote) {
      if (script.charAt(at) == '\\') {
        text.append(script, at, at + 2);
        at += 2;
      } else if (quote == '`' && script.startsWith("${", at)) {
        text.append(EXPRESSION);
        at += 2;
        code(1);
      } else {
        text.append(script.charAt(at++));
      }
    }
    at++;
    literals.add(text.toString());
  }
}
