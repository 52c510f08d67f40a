package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * axe-core's rules (WCAG 2.2 and its best practices): nothing serious and nothing critical,
 * anywhere.
 */
@Timeout(180)
class AccessibilityTest {
  private static final Set<String> GRAVE = Set.of("serious", "critical");

  @TempDir static Path folder;
  private static Browser browser;

  @BeforeAll
  static void open() {
    browser = new Browser();
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  private static List<String> findings(
      Served served, Map<String, String> pages, int width, int height, ColorScheme colours) {
    List<String> findings = new ArrayList<>();
    pages.forEach(
        (name, path) -> {
          try (Visit visit = new Visit(browser, served.at(path), width, height, colours)) {
            visit.page().waitForLoadState();
            visit
                .page()
                .evaluate(
                    "() => document.querySelectorAll('details').forEach((d) => { d.open = true; })");
            new AxeBuilder(visit.page())
                .analyze().getViolations().stream()
                    .filter(rule -> GRAVE.contains(rule.getImpact()))
                    .forEach(
                        rule ->
                            findings.add(
                                name
                                    + ": "
                                    + rule.getId()
                                    + " at "
                                    + rule.getNodes().stream()
                                        .limit(3)
                                        .map(n -> n.getHtml())
                                        .toList()));
            visit.assertUndisturbed();
          }
        });
    return findings;
  }

  /** Those with the most kinds of things on them: what is alike everywhere is looked at once. */
  private static Map<String, String> some(boolean full, String... names) {
    Map<String, String> pages = Workbench.pages(full);
    pages.keySet().retainAll(Set.of(names));
    return pages;
  }

  @Test
  void onEmptyPages() {
    try (Served served = Served.withoutBoard(folder.resolve("empty"), "range")) {
      assertThat(
              findings(
                  served,
                  some(false, "arrows", "gates", "rack", "range"),
                  360,
                  740,
                  ColorScheme.LIGHT))
          .isEmpty();
    }
  }

  @Test
  void onEveryFullPageAndInDark() {
    try (Served served = Served.withoutBoard(folder.resolve("full"), "range")) {
      Workbench.fill(served);
      assertThat(findings(served, Workbench.pages(true), 360, 740, ColorScheme.LIGHT)).isEmpty();
      assertThat(
              findings(served, some(true, "bow", "range", "session"), 1440, 900, ColorScheme.DARK))
          .isEmpty();
    }
  }
}
