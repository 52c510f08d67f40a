package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.measure.Measures;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A plan on the range page, in a real browser, over a board that shoots what the test wants. */
@Tag("browser")
@Timeout(300)
class PlanPageTest {
  private static Browser browser;

  @TempDir Path folder;
  private TypedBoard board;
  private Served served;
  private int shots;

  @BeforeAll
  static void openBrowser() {
    browser = new Browser();
  }

  @AfterAll
  static void closeBrowser() {
    browser.close();
  }

  @BeforeEach
  void serve() {
    board = new TypedBoard();
    served = Served.at(folder, board.port());
    for (String bow : new String[] {"Heron", "Wren"}) {
      served.commands().bows().add(bow, Instant.EPOCH, 200, 0.70, "");
    }
    served.commands().arrows().add("Sedge", 0.026, Measures.none());
    served.commands().arrows().add("Oak", 0.040, Measures.none());
    board.answer();
  }

  @AfterEach
  void end() {
    served.close();
    board.close();
  }

  private void shoot(Visit visit) {
    board.arrow(48, 0.73);
    assertThat(visit.by("#shots > li")).hasCount(++shots);
  }

  private long start(String turns) {
    String body = "{\"station\":\"range\",\"name\":\"Rework of Heron\",\"turns\":[%s]}";
    Asked made = Asked.send("POST", served.at("/api/plans"), body.formatted(turns));
    long plan = made.json().path("plan").asLong();
    assertThat(say(plan, "start").status()).isEqualTo(200);
    return plan;
  }

  private Asked say(long plan, String word) {
    return Asked.send(
        "POST", served.at("/api/plans/" + plan + "/events"), "{\"do\":\"" + word + "\"}");
  }

  private static String turn(String bow, String arrow) {
    return "{\"bow\":\"%s\",\"arrow\":\"%s\"}".formatted(bow, arrow);
  }

  private static String fourTurns() {
    return String.join(
        ",",
        turn("Heron", "Sedge"),
        turn("Wren", "Oak"),
        turn("Heron", "Oak"),
        turn("Wren", "Sedge"));
  }

  private static void isNext(Visit visit, String arrow, String bow, String count) {
    assertThat(visit.by("#plan-arrow")).hasText(arrow);
    assertThat(visit.by("#plan-bow")).hasText("from " + bow);
    assertThat(visit.by("#plan-count")).hasText(count);
  }

  @Test
  void eachShotShowsWhatToPickUpNextAndNothingMoves() {
    start(fourTurns());
    try (Visit visit = Visit.onAPhone(browser, served)) {
      isNext(visit, "Sedge", "Heron", "0 of 4");
      assertThat(visit.by("#plan-told")).hasText("then Oak from Wren");
      assertThat(visit.by("#plan-open")).isHidden();
      shoot(visit);
      isNext(visit, "Oak", "Wren", "1 of 4");
      BoundingBox before = visit.by("#plan").boundingBox();
      assertThat(visit.by("#bow")).containsText("Wren");
      visit.screenshot("plan-360x740");
      shoot(visit);
      isNext(visit, "Oak", "Heron", "2 of 4");
      assertThat(visit.by("#speed")).isInViewport();
      assertThat(visit.by("#plan-buttons")).isInViewport();
      assertThat(visit.by("#plan").boundingBox().y).isEqualTo(before.y);
      assertThat(visit.by("#plan").boundingBox().height).isEqualTo(before.height);

      board.misread(48);
      assertThat(visit.by("#shots > li")).hasCount(++shots);
      assertThat(visit.by("#plan-told")).hasText("✕ That one didn't count: shoot it again.");
      isNext(visit, "Oak", "Heron", "2 of 4");
      assertThat(visit.by("#plan").boundingBox().y).isEqualTo(before.y);
      assertThat(visit.by("#plan").boundingBox().height).isEqualTo(before.height);
      visit.screenshot("plan-missed-360x740");
      shoot(visit);
      shoot(visit);
      assertThat(visit.by("#plan-arrow")).hasText("All done");
      assertThat(visit.by("#plan-told")).hasText("The plan is over: 4 of 4 shot, 0 skipped.");
      visit.screenshot("plan-over-360x740");
      visit.by("#plan-buttons button:has-text('put away')").click();
      assertThat(visit.by("#plan")).isHidden();
      assertThat(visit.by("#plan-open")).isVisible();
      visit.assertUndisturbed();
    }
    try (Visit wide = new Visit(browser, served.at("/"), 1440, 900, ColorScheme.DARK)) {
      assertThat(wide.by("#plan-arrow")).hasText("All done");
      wide.screenshot("plan-over-1440x900");
    }
  }

  @Test
  void buttonsAndKeysSkipRepeatPauseAndAreUndone() {
    start(fourTurns());
    try (Visit visit = Visit.onAPhone(browser, served)) {
      shoot(visit);
      isNext(visit, "Oak", "Wren", "1 of 4");
      Page page = visit.page();
      page.keyboard().press("s");
      isNext(visit, "Oak", "Heron", "1 of 4");
      visit.button("undo").click();
      isNext(visit, "Oak", "Wren", "1 of 4");
      page.keyboard().press("r");
      isNext(visit, "Sedge", "Heron", "1 of 4");
      visit.button("undo").click();
      isNext(visit, "Oak", "Wren", "1 of 4");
      visit.by("#plan-buttons button:has-text('skip')").click();
      isNext(visit, "Oak", "Heron", "1 of 4");
      page.keyboard().press("p");
      assertThat(visit.by("#plan-told")).containsText("Paused");
      visit.screenshot("plan-paused-360x740");
      page.keyboard().press("p");
      assertThat(visit.by("#plan-told")).hasText("then Sedge from Wren");

      visit.by("#plan-more").click();
      assertThat(visit.by("dialog .turns li")).hasCount(4);
      assertThat(visit.by("dialog .turns li").nth(1)).containsText("skipped");
      assertThat(visit.by("dialog [aria-current]")).containsText("Oak from Heron");
      page.keyboard().press("s"); // not for the page while a sheet is open
      assertThat(visit.by("dialog")).isVisible();
      visit.screenshot("plan-turns-360x740");
      visit.button("turn the keys S, R and P off").click();
      assertThat(visit.by("#plan-buttons kbd")).hasCount(0);
      page.keyboard().press("s");
      isNext(visit, "Oak", "Heron", "1 of 4");
      visit.by("#plan-more").click();
      visit.button("end the plan").click();
      assertThat(visit.by("#plan-told"))
          .hasText("The plan is over: 1 of 4 shot, 1 skipped, 2 left.");
      visit.button("undo").click();
      isNext(visit, "Oak", "Heron", "1 of 4");
      visit.assertUndisturbed();
    }
  }

  @Test
  void anArrowTooLightForItsBowIsCautioned() {
    served.commands().bows().add("Strong", Instant.EPOCH, 300, 0.70, "");
    start(turn("Strong", "Sedge") + "," + turn("Heron", "Sedge"));
    try (Visit visit = Visit.onAPhone(browser, served)) {
      // 0.026 kg / 0.06479891 g a grain, over 300 N / 4.4482216 N a pound
      assertThat(visit.by("#plan-told"))
          .hasText("▲ 5.9 gpp: hard on a wooden bow; then Sedge from Heron");
      visit.assertUndisturbed();
    }
  }

  @Test
  void aBowChosenByHandPausesItAndTheOfferToRepeatIsOneTap() {
    start(fourTurns());
    try (Visit visit = Visit.onAPhone(browser, served)) {
      shoot(visit);
      isNext(visit, "Oak", "Wren", "1 of 4");
      visit.by("#verdict").click();
      visit.button("plucked loose").click();
      assertThat(visit.by("#plan-again"))
          .containsText("Turn 1, Sedge from Heron: its shot was set aside or retagged since.");
      visit.by("#bow").click();
      visit.button("Heron").click();
      assertThat(visit.by("#plan-told")).containsText("Paused: bow or arrow was changed by hand.");
      visit.wholeScreenshot("plan-again-360-whole");
      visit.by("#plan-again button").click();
      isNext(visit, "Sedge", "Heron", "1 of 4");
      shoot(visit);
      isNext(visit, "Oak", "Wren", "1 of 4");
      assertThat(visit.by("#plan-again p")).hasCount(0);
      visit.assertUndisturbed();
    }
  }

  @Test
  void aPlanIsMadeByHandAndFromTheReport() {
    try (Visit visit = Visit.onAPhone(browser, served)) {
      assertThat(visit.by("#plan")).isHidden();
      visit.by("#plan-open").click();
      visit.button("by hand").click();
      visit.button("make and start").scrollIntoViewIfNeeded();
      visit.page().locator("dialog details[open] button").click();
      assertThat(visit.by(".bar")).containsText("Tick a bow and an arrow at least.");
      for (String name : new String[] {"Heron", "Sedge", "Oak"}) {
        visit.page().locator("dialog label:has-text('" + name + "') input").check();
      }
      visit.page().locator("dialog details[open] select").selectOption("in order");
      visit.fill("rounds", "2");
      visit.wholeScreenshot("plan-by-hand-360");
      visit.screenshot("plan-by-hand-360x740");
      visit.page().locator("dialog details[open] button").click();
      isNext(visit, "Sedge", "Heron", "0 of 4");
      assertThat(visit.by("#plan-told")).hasText("then Oak from Heron");
      visit.by("#plan-more").click();
      visit.button("end the plan").click();
      visit.by("#plan-buttons button:has-text('new plan')").click();
      visit.button("for a rework").click();
      visit.page().locator("dialog details[open] button").click();
      assertThat(visit.by(".bar")).containsText("don't tell a scatter yet");
      visit.fill("sd_fps", "1");
      visit.page().locator("dialog details[open] select").nth(1).selectOption("Wren");
      visit.screenshot("plan-rework-360x740");
      visit.page().locator("dialog details[open] button").click();
      assertThat(visit.by("#plan-name")).hasText("Rework of Heron");
      assertThat(visit.by("#plan-count")).hasText(Pattern.compile("0 of \\d\\d+"));
      visit.assertDisturbedOnlyBy("Failed to load resource"); // the refusal
    }
  }

  @Test
  void aShotThatFitsAnotherArrowBetterIsRetaggedInOneTap() {
    double[] off = {0.2, -0.1, 0, 0.1, -0.2};
    try (Visit visit = Visit.onAPhone(browser, served)) {
      served.commands().tag("range", Optional.of("Heron"), Optional.of("Oak"), "test");
      for (double o : off) {
        board.arrow(44 + o, 0.76 + o / 100);
        assertThat(visit.by("#shots > li")).hasCount(++shots);
      }
      served.commands().tag("range", Optional.of("Heron"), Optional.of("Sedge"), "test");
      for (double o : off) {
        board.arrow(50 + o, 0.71 + o / 100);
        assertThat(visit.by("#shots > li")).hasCount(++shots);
      }
      double y = visit.by("#figures").boundingBox().y;
      board.arrow(44.02, 0.761);
      assertThat(visit.by("#last-hint")).containsText("▲ fits Heron · Oak better than its tags");
      assertThat(visit.by("#figures").boundingBox().y).isEqualTo(y);
      assertThat(visit.by("#shots > li").first()).containsText("fits Heron · Oak better");
      visit.screenshot("misfit-360x740");
      visit.by("#verdict").click();
      visit.screenshot("misfit-sheet-360x740");
      visit.page().keyboard().press("Escape");
      visit.by("#last-hint button").click();
      assertThat(visit.by("#shots > li").first()).containsText("Heron · Oak");
      assertThat(visit.by("#last-hint")).isHidden();
      visit.assertUndisturbed();
    }
  }

  @Test
  void aPluckedShotIsToldAndSetAsideInOneTap() {
    try (Visit visit = Visit.onAPhone(browser, served)) {
      served.commands().tag("range", Optional.of("Heron"), Optional.of("Oak"), "test");
      for (double off : new double[] {0.2, -0.1, 0}) {
        board.arrow(44 + off, 0.76 + off / 100);
        assertThat(visit.by("#shots > li")).hasCount(++shots);
      }
      double y = visit.by("#figures").boundingBox().y;
      board.arrow(41, 0.76);
      assertThat(visit.by("#last-hint")).containsText("▲ a stray by shots so far: over 99 % sure");
      visit.screenshot("stray-360x740");
      assertThat(visit.by("#figures").boundingBox().y).isEqualTo(y);
      assertThat(visit.by("#shots > li").first()).containsText("a stray by shots");
      visit.by("#verdict").click();
      assertThat(visit.by("dialog[open]")).containsText("it is good: keep it");
      visit.screenshot("stray-sheet-360x740");
      visit.page().keyboard().press("Escape");
      visit.by("#last-hint button").click();
      assertThat(visit.by("#shots > li").first()).containsText("doesn't count");
      assertThat(visit.by("#last-hint")).isHidden();
      visit.assertUndisturbed();
    }
  }

  @Test
  void longNamesAndAWideScreenFit() {
    String bow = "The yew longbow with the horn nocks of grandfather, 2019";
    String arrow = "Pine shaft 11/32, three turkey feathers, 125 gr field point";
    served.commands().bows().add(bow, Instant.EPOCH, 200, 0.70, "");
    served.commands().arrows().add(arrow, 0.03, Measures.none());
    start(turn(bow, arrow) + "," + fourTurns());
    try (Visit visit = Visit.onAPhone(browser, served)) {
      isNext(visit, arrow, bow, "0 of 5");
      BoundingBox before = visit.by("#plan").boundingBox();
      visit.screenshot("plan-long-names-360x740");
      shoot(visit);
      isNext(visit, "Sedge", "Heron", "1 of 5");
      assertThat(visit.by("#plan").boundingBox().height).isEqualTo(before.height);
      int width = (int) visit.page().evaluate("document.documentElement.scrollWidth");
      assertThat(width).isLessThanOrEqualTo(360);
    }
    for (ColorScheme colours : ColorScheme.values()) {
      if (colours != ColorScheme.NO_PREFERENCE) {
        try (Visit wide = new Visit(browser, served.at("/"), 1440, 900, colours)) {
          isNext(wide, "Sedge", "Heron", "1 of 5");
          assertThat(wide.by("#plan-buttons")).isInViewport();
          wide.screenshot("plan-1440x900-" + colours.name().toLowerCase(Locale.ROOT));
        }
      }
    }
  }
}
