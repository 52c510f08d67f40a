package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import castwell.analysis.unit.Units;
import castwell.capture.Until;
import castwell.capture.device.PseudoTerminal;
import castwell.capture.rehearsal.RehearsalBow;
import castwell.capture.rehearsal.RehearsalRack;
import castwell.capture.rehearsal.RehearsalSettings;
import castwell.capture.store.Store;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The range page in a real browser, over the real daemon and its pretended board. */
@Tag("browser")
@Timeout(300)
class RangePageTest {
  /** Its first end: eight passages, of which the third, the fifth and the seventh don't count. */
  private static final int SEED = 8;

  private static final int PASSAGES = 8;
  private static final Pattern ANSWERS = Pattern.compile("rehearsal-1 (answers|beats)\\.");
  private static Browser browser;

  @TempDir Path folder;
  @TempDir static Path shotFolder;

  /** Where that end is over. */
  private static Served shot;

  @BeforeAll
  static void openBrowser() {
    shot = rehearsal(shotFolder, SEED, 0);
    browser = new Browser();
    Until.holds("the end", () -> shots(shot).size() == PASSAGES);
  }

  @AfterAll
  static void closeBrowser() {
    browser.close();
    shot.close();
  }

  /** One end, an arrow every 0.6 s, then nobody shoots for an hour. */
  private static Served rehearsal(Path folder, int seed, int httpPort) {
    RehearsalSettings settings =
        new RehearsalSettings(seed, "rehearsal-1", 0, 0.6, 3600, 0.006, 0.4);
    return Served.rehearsal(folder, settings, httpPort);
  }

  private static void awaitShots(Visit visit, int count) {
    assertThat(visit.by("#shots > li")).hasCount(count);
  }

  private static JsonNode range(Served served) {
    return Asked.get(served.at("/api/range")).json();
  }

  private static List<JsonNode> shots(Served served) {
    return StreamSupport.stream(range(served).at("/end/shots").spliterator(), false).toList();
  }

  /** The list's n-th shot in the order shot; the list itself has the newest first. */
  private static Locator shot(Visit visit, int number) {
    return visit.by("#shots > li:nth-last-child(" + number + ") button");
  }

  private static void assertShownDigits(Visit visit, JsonNode shot) {
    String digits = String.format(Locale.ROOT, "%.1f", shot.path("speed_fps").asDouble());
    assertThat(visit.by("#speed")).hasText(digits);
  }

  @Test
  void shotsAppearByThemselvesAndMisreadsSayWhy() {
    try (Served served = rehearsal(folder, SEED, 0);
        Visit visit = Visit.onAPhone(browser, served)) {
      assertThat(visit.by("#rehearsal")).isVisible();
      assertThat(visit.by("#rehearsal")).hasText("Rehearsal: pretend shots, not yours");
      assertThat(visit.by("#link-words")).hasText(ANSWERS);
      assertThat(visit.by("#link-shape")).hasText("●");
      assertThat(visit.by("#link-more")).hasText("gate A □ clear, gate B □ clear");
      awaitShots(visit, PASSAGES);
      List<JsonNode> shots = shots(served);
      assertShownDigits(visit, shots.get(7));
      assertThat(visit.by("#speed-u")).hasText(Pattern.compile("± 0\\.\\d"));
      assertThat(visit.by("#speed-parts"))
          .hasText(Pattern.compile("own 0\\.\\d+, common to the set-up 0\\.\\d+"));
      assertThat(visit.by("#figures")).containsText("ft·lbf");
      assertThat(visit.by("#groups")).containsText("5 count, mean ");
      String meanFps =
          visit.by("#groups").textContent().replaceFirst("(?s).*mean (\\S+) ft.*", "$1");
      RehearsalBow bow = RehearsalRack.bows().get(0);
      double wantedMps = bow.speedMps(RehearsalRack.arrows().get(0));
      assertThat(Double.parseDouble(meanFps) * Units.METRES_PER_FOOT)
          .isCloseTo(wantedMps, withinPercentage(1));
      assertThat(visit.by("#groups")).containsText("3 set aside");
      assertThat(visit.by("#groups svg .dot")).hasCount(5);
      assertThat(visit.by("#groups svg .cross")).hasCount(2); // the third has no speed
      assertThat(shot(visit, 8)).containsText("● counts");
      for (int number : List.of(3, 5, 7)) {
        assertThat(shot(visit, number)).containsText("✕ doesn't count");
        assertThat(shot(visit, number)).containsText(shots.get(number - 1).path("reason").asText());
        assertThat(shot(visit, number)).hasAttribute("data-counts", "false");
      }
      visit.assertUndisturbed();
    }
  }

  @Test
  void aShotsSheetShowsWhatEachEdgeWas() {
    try (Visit visit = Visit.onAPhone(browser, shot)) {
      awaitShots(visit, PASSAGES);
      shot(visit, 1).click();
      assertThat(visit.by("#sheet .edges svg")).isVisible();
      assertThat(visit.by("#sheet .edges rect.arrow").first()).isVisible();
      visit.by("#sheet .edges summary").click();
      assertThat(visit.by("#sheet .edges tbody")).containsText("the arrow's front");
      assertThat(visit.by("#sheet .edges tbody")).containsText("the arrow's tail");
      visit.by("#sheet .edges").scrollIntoViewIfNeeded();
      visit.screenshot("edges-360x740");
      visit.assertUndisturbed();
    }
  }

  @Test
  void aMisreadIsGreyedAndStruckInTheLargeDigitsToo() {
    try (Served served = rehearsal(folder, 1, 0); // its sixth and last passage is a misread
        Visit visit = Visit.onAPhone(browser, served)) {
      awaitShots(visit, 6);
      assertShownDigits(visit, shots(served).get(5));
      assertThat(visit.by("#last-verdict")).hasText("✕ doesn't count");
      assertThat(visit.by("#last-reason")).hasText("Gate A never saw its front.");
      assertThat(visit.by("#speed")).hasCSS("text-decoration-line", "line-through");
      visit.screenshot("misread-360x740");
      visit.assertUndisturbed();
    }
  }

  @Test
  void aShotIsSetAsideUndoneBroughtBackAndRetagged() {
    try (Served served = rehearsal(folder, SEED, 0);
        Visit visit = Visit.onAPhone(browser, served)) {
      awaitShots(visit, PASSAGES);
      shot(visit, 2).click();
      visit.screenshot("shot-sheet-360x740");
      visit.button("plucked loose").click();
      assertThat(shot(visit, 2)).containsText("Set aside: plucked loose.");
      assertThat(visit.by("#groups")).containsText("4 count");
      visit.button("undo").click();
      assertThat(shot(visit, 2)).containsText("● counts");
      assertThat(visit.by("#groups")).containsText("5 count");

      shot(visit, 3).click();
      visit.button("bring back").click();
      assertThat(shot(visit, 3)).containsText("● counts");
      assertThat(shot(visit, 3)).containsText("by hand");
      shot(visit, 3).click();
      visit.button("leave it to the rules again").click();
      assertThat(shot(visit, 3)).containsText("✕ doesn't count");

      visit.by("#verdict").click(); // the last shot, from the top
      visit.page().locator("dialog input[name=reason]").fill("a gust");
      visit.page().locator("dialog form button").click();
      assertThat(visit.by("#last-reason")).hasText("Set aside: a gust.");

      visit.by("#bow").click();
      visit.button("Dunnock").click();
      assertThat(visit.by("#bow")).containsText("Dunnock");
      shot(visit, 1).click();
      visit.button("retag to Dunnock · Reed").click();
      assertThat(shot(visit, 1)).containsText("Dunnock · Reed");
      assertThat(visit.by("#groups figure")).hasCount(2);
      shot(visit, 1).click();
      visit.button("other tags").click();
      visit.page().locator("dialog select").first().selectOption("Heron");
      visit.page().locator("dialog select").nth(1).selectOption("Oak");
      visit.by("dialog .fields button").click();
      assertThat(shot(visit, 1)).containsText("Heron · Oak");
      visit.button("undo").click();
      assertThat(shot(visit, 1)).containsText("Dunnock · Reed");
      visit.assertUndisturbed();
    }
  }

  @Test
  void whoeverHasNothingYetIsLedToTheFirstShot() {
    try (Served served = Served.withoutBoard(folder, "range");
        Visit visit = Visit.onAPhone(browser, served)) {
      assertThat(visit.by("#first-use")).containsText("First add a bow");
      assertThat(visit.by("#rehearsal")).isHidden();
      assertThat(visit.by("#link-words")).containsText("no-board");
      assertThat(visit.by("#link-shape")).hasText("▲");
      visit.wholeScreenshot("first-use-360");

      visit.by("#bow").click();
      visit.screenshot("add-a-bow-360x740");
      visit.fill("name", "Rowan");
      visit.fill("draw_weight_lb", "5200");
      visit.fill("draw_length_in", "27");
      visit.fill("done", "tillered");
      visit.button("add and choose").click();
      assertThat(visit.by(".bar")).containsText("A draw weight lies between 1 and 250 lb");
      visit.screenshot("refusal-360x740");
      visit.fill("draw_weight_lb", "52.5");
      visit.button("add and choose").click();
      assertThat(visit.by("#bow")).containsText("Rowan");
      assertThat(visit.by("#bow")).containsText("52.5 lb at 27 in");

      assertThat(visit.by("#first-use")).containsText("Next add an arrow");
      visit.by("#arrow").click();
      visit.fill("name", "Rush");
      visit.fill("mass_gr", "400");
      visit.button("add and choose").click();
      assertThat(visit.by("#arrow")).containsText("400 gr · 7.6 gpp ▲ below 8");
      assertThat(visit.by("#first-use")).isHidden();

      visit.by("#arrow").click();
      visit.button("add an arrow").click();
      visit.fill("name", "Rush");
      visit.fill("mass_gr", "400");
      visit.button("add and choose").click();
      assertThat(visit.by(".bar")).containsText("There is an arrow named Rush already");
      visit.button("close").click();
      visit.assertDisturbedOnlyBy("Failed to load resource"); // the two refusals
    }
  }

  @Test
  void whatIsDoneToABowHoldsFromNowOn() {
    String wren = "{\"station\":\"rehearsal\",\"bow\":\"Wren\",\"arrow\":\"Reed\"}";
    assertThat(Asked.send("PUT", shot.at("/api/tags"), wren).status()).isEqualTo(200);
    RehearsalBow bow = RehearsalRack.bows().get(0);
    String weightLb = "%.1f".formatted(bow.drawWeightN() / Units.NEWTONS_PER_POUND);
    try (Visit visit = Visit.onAPhone(browser, shot)) {
      awaitShots(visit, PASSAGES);
      assertThat(visit.by("#bow")).containsText(weightLb + " lb at ");
      visit.by("#bow").click();
      visit.button("something was done to Wren").click();
      assertThat(visit.by("dialog details[open] input[name=draw_weight_lb]")).hasValue(weightLb);
      visit.fill("draw_weight_lb", "38.5");
      visit.fill("done", "tips lightened");
      visit.screenshot("bow-state-360x740");
      visit.button("from now on").click();
      assertThat(visit.by("#bow")).containsText("38.5 lb at ");
      // What was shot before keeps the bow as it was.
      for (JsonNode shot : shots(shot)) {
        assertThat(shot.path("draw_weight_lb").asDouble()).isGreaterThan(39);
      }
      visit.assertUndisturbed();
    }
  }

  @Test
  void aPageOutlivesItsServer() {
    Visit visit;
    int port;
    int before;
    try (Served first = rehearsal(folder, SEED, 0)) {
      port = first.httpPort();
      visit = Visit.onAPhone(browser, first);
      assertThat(visit.by("#shots > li").first()).isVisible();
    }
    try (visit) {
      assertThat(visit.by("#lost")).isVisible();
      visit.screenshot("connection-lost-360x740");
      try (Store stored = Store.open(folder)) {
        before = stored.read(t -> t.shots().latest("rehearsal", 99)).size();
      }
      try (Served second = rehearsal(folder, 1, port)) {
        Until.holds("another end", () -> shots(second).size() >= before + 6);
        awaitShots(visit, before + 6);
        assertThat(visit.by("#lost")).isHidden();
        assertShownDigits(visit, shots(second).get(before + 5));
      }
      visit.assertDisturbedOnlyBy("net::ERR_"); // what the browser says of a server that is away
    }
  }

  @Test
  void theKeyboardIsEnough() {
    try (Visit visit = Visit.onAPhone(browser, shot)) {
      awaitShots(visit, PASSAGES);
      Page page = visit.page();
      tabTo(page, "#bow");
      page.keyboard().press("Enter");
      assertThat(visit.by("#sheet")).isVisible();
      page.keyboard().press("Escape");
      assertThat(visit.by("#sheet")).isHidden();
      assertThat(visit.by("#bow")).isFocused();
      page.keyboard().press("Enter");
      String another = RehearsalRack.bows().get(1).name();
      tabTo(page, "dialog .choice:has-text('%s')".formatted(another));
      assertThat(page.locator(":focus")).hasCSS("outline-style", "solid");
      page.keyboard().press("Enter");
      assertThat(visit.by("#bow")).containsText(another);
      assertThat(visit.by("#sheet")).isHidden();
      visit.assertUndisturbed();
    }
  }

  private static void tabTo(Page page, String selector) {
    Locator wanted = page.locator(selector);
    for (int i = 0; i < 30; i++) {
      page.keyboard().press("Tab");
      if ((boolean) wanted.evaluate("element => element === document.activeElement")) {
        return;
      }
    }
    throw new AssertionError("thirty times Tab don't lead to " + selector);
  }

  @Test
  void aBoardThatFallsSilentIsToldInWords() {
    String identity = "$I,61033,1,sim-1.0,gate-1,7,2000000,2,0,0,64,P*2576\r\n";
    String heartbeat = "$H,61034,7,1368708,0,0,0,0,CC,812,807,5012,2150,1875,5510*264F\r\n";
    try (PseudoTerminal board = new PseudoTerminal();
        Served served = Served.at(folder, board.port());
        Visit visit = Visit.onAPhone(browser, served)) {
      board.read(); // the board is asked who it is
      board.write((identity + heartbeat).getBytes(StandardCharsets.US_ASCII));
      assertThat(visit.by("#link-words")).containsText("gate-1");
      assertThat(visit.by("#link-words")).containsText("offline: no heartbeat for 3 s");
      assertThat(visit.by("#link-shape")).hasText("✕");
      visit.assertUndisturbed();
    }
  }

  @Test
  void itFitsAPhoneAndADesktop() {
    try (Visit visit = Visit.onAPhone(browser, shot)) {
      awaitShots(visit, PASSAGES);
      assertThat(width(visit.page())).isLessThanOrEqualTo(360);
      // About a fifth of the phone's height, to be read from 5 m (common practice, no source)
      visit.page().waitForCondition(() -> share(visit) > 0.18 && share(visit) < 0.25);
      visit.wholeScreenshot("range-360-whole");
      visit.by("#bow").click();
      visit.screenshot("choose-a-bow-360x740");
      visit.page().keyboard().press("Escape");
      visit.by("#arrow").click();
      visit.screenshot("choose-an-arrow-360x740");
      assertThat(width(visit.page())).isLessThanOrEqualTo(360);
      visit.assertUndisturbed();
    }
    for (ColorScheme colours : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
      screenshot(360, 740, colours);
      screenshot(1280, 800, colours);
    }
  }

  /** Of the screen's height, by the digits. */
  private static double share(Visit visit) {
    return visit.by("#speed").boundingBox().height / visit.page().viewportSize().height;
  }

  private static void screenshot(int width, int height, ColorScheme colours) {
    try (Visit visit = new Visit(browser, shot.at("/"), width, height, colours)) {
      awaitShots(visit, PASSAGES);
      assertThat(width(visit.page())).isLessThanOrEqualTo(width);
      visit.screenshot(
          "range-%dx%d-%s".formatted(width, height, colours.name().toLowerCase(Locale.ROOT)));
    }
  }

  private static int width(Page page) {
    return (int) page.evaluate("document.documentElement.scrollWidth");
  }
}
