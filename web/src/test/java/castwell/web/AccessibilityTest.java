package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * axe-core's rules (WCAG 2.2 and its best practices): nothing serious and nothing critical, with
 * every fold open. -Dcastwell.screens=all has every page at every size, in both colours.
 */
@Timeout(900)
@Tag("browser")
class AccessibilityTest {
  private static final Set<String> GRAVE = Set.of("serious", "critical");
  private static final boolean ALL = "all".equals(System.getProperty("castwell.screens"));
  private static final List<ColorScheme> BOTH = List.of(ColorScheme.LIGHT, ColorScheme.DARK);
  private static final String OPEN_FOLDS =
      "() => document.querySelectorAll('details').forEach((d) => { d.open = true; })";

  @TempDir static Path folder;
  private static Browser browser;
  private static Served empty;
  private static Served full;

  @BeforeAll
  static void open() {
    browser = new Browser();
    empty = Workbench.serve(folder.resolve("empty"));
    full = Workbench.serve(folder.resolve("full"));
    Workbench.fill(full);
  }

  @AfterAll
  static void close() {
    full.close();
    empty.close();
    browser.close();
  }

  private static List<String> findings(
      Served served, Map<String, String> pages, Workbench.Screen screen, ColorScheme colours) {
    List<String> findings = new ArrayList<>();
    try (Visit visit = new Visit(browser, served.at("/enter"), screen, colours)) {
      pages.forEach(
          (name, path) -> {
            visit.page().navigate(served.at(path).toString());
            Workbench.settle(visit, path);
            visit.page().evaluate(OPEN_FOLDS);
            findings.addAll(findings(visit, name + " " + screen.name() + " " + colours));
          });
      visit.assertUndisturbed();
    }
    return findings;
  }

  private static List<String> findings(Visit visit, String where) {
    return new AxeBuilder(visit.page())
            .setLegacyMode(
                true) // much faster; the other way is for frames, of which there are none
            .options(violationsOnly())
            .analyze()
            .getViolations()
            .stream()
            .filter(rule -> GRAVE.contains(rule.getImpact()))
            .map(rule -> where + ": " + told(rule))
            .toList();
  }

  private static AxeRunOptions violationsOnly() {
    AxeRunOptions options = new AxeRunOptions();
    options.setResultTypes(List.of("violations"));
    return options;
  }

  private static String told(Rule rule) {
    return rule.getId() + " at " + rule.getNodes().stream().limit(3).map(n -> n.getHtml()).toList();
  }

  private static void assertNoneOn(
      Served served, Map<String, String> pages, Workbench.Screen one, ColorScheme colours) {
    for (Workbench.Screen screen : ALL ? Workbench.SCREENS : List.of(one)) {
      for (ColorScheme colour : ALL ? BOTH : List.of(colours)) {
        assertThat(findings(served, pages, screen, colour)).isEmpty();
      }
    }
  }

  @Test
  void onEveryEmptyPage() {
    assertNoneOn(empty, Workbench.pages(false), Workbench.PHONE, ColorScheme.DARK);
  }

  @Test
  void onEveryFullPage() {
    assertNoneOn(full, Workbench.pages(true), Workbench.PHONE, ColorScheme.LIGHT);
  }

  @Test
  void onFullPagesInDarkAndLarge() {
    Map<String, String> pages = Workbench.pages(true);
    if (!ALL) {
      pages.keySet().retainAll(Set.of("bow", "range", "rework")); // all kinds of marks and colours
    }
    assertNoneOn(full, pages, Workbench.DESKTOP, ColorScheme.DARK);
  }

  @Test
  void onAPageThatIsntThere() {
    try (Visit visit =
        new Visit(browser, full.at("/bows/Nobody"), Workbench.PHONE, ColorScheme.LIGHT)) {
      assertThat(visit.by("#content").textContent()).contains("Nobody");
      assertThat(findings(visit, "trouble")).isEmpty();
      visit.assertDisturbedOnlyBy("404");
    }
  }

  @Test
  void whatIsWrongWouldBeFound() {
    try (Visit visit = new Visit(browser, empty.at("/rack"), Workbench.PHONE, ColorScheme.LIGHT)) {
      visit.by("input[name=name]").evaluate("field => field.parentElement.replaceWith(field)");
      assertThat(findings(visit, "rack")).singleElement().asString().contains("label");
    }
  }

  @Test
  void onTheRangePagesSheets() {
    try (Visit visit = new Visit(browser, full.at("/"), Workbench.PHONE, ColorScheme.LIGHT)) {
      Workbench.sheets(true)
          .forEach(
              (name, button) -> {
                Workbench.openSheet(visit, button);
                visit.page().evaluate(OPEN_FOLDS);
                assertThat(findings(visit, name)).isEmpty();
                visit.page().keyboard().press("Escape");
              });
      visit.assertUndisturbed();
    }
  }
}
