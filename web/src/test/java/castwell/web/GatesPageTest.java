package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.device.PseudoTerminal;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The gates page in a real browser, over the real daemon and a board on a pseudo-terminal. */
@Tag("browser")
@Timeout(300)
class GatesPageTest {
  @TempDir Path folder;
  private final SaidByBoard said = new SaidByBoard();
  private Browser browser;
  private PseudoTerminal board;
  private Served served;

  @BeforeEach
  void open() {
    browser = new Browser();
    board = new PseudoTerminal();
    served = Served.at(folder, board.port());
    board.read(); // the board is asked who it is
    board.write(said.identity());
    beat("CC", 700, 805);
    beat("CC", 700, 805);
  }

  @AfterEach
  void close() {
    browser.close();
    served.close();
    board.close();
  }

  private void beat(String levels, int lightA, int lightB) {
    board.write(said.beat(levels, lightA, lightB));
  }

  /** The page follows the feed by now, so that the next beat shows. */
  private Visit visit(int width, int height, ColorScheme colours) {
    Visit visit = new Visit(browser, served.at("/gates.html"), width, height, colours);
    Until.holds( // it beats on: until the page is there, a board may be silent for too long
        "the light",
        () -> {
          beat("CC", 700, 805);
          return gate(visit, "a", "figure").textContent().equals("700")
              && visit.by("#link-words").textContent().equals("gate-1 answers.");
        });
    return visit;
  }

  private static Locator gate(Visit visit, String gate, String part) {
    return visit.by("#gate-" + gate + " ." + part);
  }

  @Test
  void theBarsFollowTheLightAndMarkTheBest() {
    try (Visit visit = visit(360, 740, ColorScheme.LIGHT)) {
      beat("CC", 720, 805);
      assertThat(gate(visit, "a", "figure")).hasText("720");
      assertThat(gate(visit, "a", "level")).hasText("□ clear");
      beat("CC", 760, 805);
      assertThat(gate(visit, "a", "advice")).hasText("▲ growing: go on turning");
      assertThat(gate(visit, "b", "advice")).hasText("● at its best so far");
      beat("CC", 830, 805);
      assertThat(gate(visit, "a", "figure")).hasText("830");
      beat("CC", 790, 805);
      assertThat(gate(visit, "a", "advice")).hasText("▼ below the best, 830: turn back");
      assertThat(gate(visit, "a", "now")).hasAttribute("width", "790");
      assertThat(gate(visit, "a", "best")).hasAttribute("x", "822"); // ends at 830
      assertThat(gate(visit, "a", "meter")).hasAttribute("aria-valuenow", "790");
      visit.screenshot("gates-aligning-360x740");
      visit.by("#anew").focus();
      visit.page().keyboard().press("Enter");
      assertThat(gate(visit, "a", "advice")).hasText("● at its best so far");
      beat("BC", 140, 805);
      assertThat(gate(visit, "a", "level")).hasText("■ blocked");
      visit.assertUndisturbed();
    }
  }

  @Test
  void whatIsNotWellComesFirstWithShapeWordAndRemedy() {
    try (Visit visit = visit(360, 740, ColorScheme.LIGHT)) {
      assertThat(visit.by("#items > li").first()).containsText("light A");
      assertThat(visit.by("#items > li").first()).containsText("? can't tell");
      assertThat(visit.by("#items > li").first()).containsText("→ Align it once");
      assertThat(visit.by("#items > li").last()).containsText("● well");
      assertThat(visit.by("#items")).containsText(Pattern.compile("heartbeat.*every 1.000 s"));
      assertThat(visit.by("#items")).containsText(Pattern.compile("1 s · n = \\d"));
      board.close();
      assertThat(visit.by("#items > li").first()).containsText("✕ bad");
      assertThat(gate(visit, "a", "figure")).hasText("– – –");
      visit.wholeScreenshot("gates-unplugged-360-whole");
      visit.assertUndisturbed();
    }
    board = new PseudoTerminal();
  }

  @Test
  void itIsLinkedFromTheRangeAndBack() {
    try (Visit visit = Visit.onAPhone(browser, served)) {
      visit.by(".to-gates").click();
      assertThat(visit.by("#align-heading")).isVisible();
      assertThat(visit.by(".caution")).containsText("Don't look into the infra-red emitters");
      visit.by("a[href='/']").click();
      assertThat(visit.by("#speed")).isVisible();
      visit.assertDisturbedOnlyBy("net::ERR_"); // what was asked for when the page was left
    }
  }

  @Test
  void itFitsAPhoneAndADesktop() {
    for (ColorScheme colours : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
      for (int width : List.of(360, 1280)) {
        try (Visit visit = visit(width, 800, colours)) {
          beat("CC", 830, 805);
          beat("CC", 790, 805);
          assertThat(gate(visit, "a", "figure")).hasText("790");
          assertThat(visit.by("#items > li").first()).isVisible();
          assertThat((int) visit.page().evaluate("document.documentElement.scrollWidth"))
              .isLessThanOrEqualTo(width);
          visit.wholeScreenshot(
              "gates-%d-%s".formatted(width, colours.name().toLowerCase(Locale.ROOT)));
        }
      }
    }
  }
}
