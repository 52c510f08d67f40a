package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.rehearsal.RehearsalSettings;
import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The range page where many shoot side by side, in a real browser. */
@Tag("browser")
@Timeout(300)
class LanesPageTest {
  private static final int LANES = 40;

  /** The others' boards aren't there. */
  private static final int ANSWERING = Integer.getInteger("castwell.lanes", 12);

  private static Browser browser;
  private static Served served;

  @TempDir static Path folder;

  /** On lanes 7 and 12 an end of five or six is soon over; lane 3 shoots on; the others wait. */
  @BeforeAll
  static void open() {
    Map<String, Optional<RehearsalSettings>> lanes = new LinkedHashMap<>();
    for (int i = 1; i <= LANES; i++) {
      boolean isThere = i <= ANSWERING;
      double between = i == 7 || i == 12 || i == 3 ? 0.4 : 3600;
      double fetching = i == 3 ? 0.4 : 3600;
      lanes.put(
          "lane-" + i, isThere ? Optional.of(settings(i, between, fetching)) : Optional.empty());
    }
    served = Served.lanes(folder, lanes);
    browser = new Browser();
    Until.holds("both ends", () -> shots("lane-7") > 4 && shots("lane-12") > 4);
  }

  private static RehearsalSettings settings(int lane, double between, double fetching) {
    return new RehearsalSettings(lane, "gate-" + lane, 0, between, fetching, 0.006, 0);
  }

  @AfterAll
  static void close() {
    browser.close();
    served.close();
  }

  private static JsonNode range(String station) {
    return Asked.get(served.at("/api/range?station=" + station)).json();
  }

  private static int shots(String station) {
    return range(station).at("/end/shots").size();
  }

  private static String digits(String station) {
    return String.format(Locale.ROOT, "%.1f", range(station).at("/last/speed_fps").asDouble());
  }

  private static Visit visit(String path) {
    return new Visit(browser, served.at(path), 360, 740, ColorScheme.LIGHT);
  }

  private static Locator listed(Visit visit, String station) {
    return visit
        .by("dialog[open] .choice")
        .filter(new Locator.FilterOptions().setHasText(Pattern.compile("^" + station + "\\D")));
  }

  private static int width(Page page) {
    return (int) page.evaluate("document.documentElement.scrollWidth");
  }

  @Test
  void theAddressNamesTheStationAndAnotherIsTwoTapsAway() {
    try (Visit visit = visit("/?station=lane-7")) {
      assertThat(visit.by("#lane b")).hasText("lane-7");
      assertThat(visit.by("#speed")).hasText(digits("lane-7"));
      assertThat(visit.by("#stations")).isHidden();
      assertThat(width(visit.page())).isLessThanOrEqualTo(360);
      visit.screenshot("lanes-360x740");
      visit.by("#lane").click();
      assertThat(visit.by("dialog[open] .choice")).hasCount(LANES);
      assertThat(width(visit.page())).isLessThanOrEqualTo(360);
      visit.screenshot("choose-a-lane-360x740");
      listed(visit, "lane-12").click();
      assertThat(visit.by("#lane b")).hasText("lane-12");
      assertThat(visit.by("#speed")).hasText(digits("lane-12"));
      assertThat(visit.by("#shots > li")).hasCount(shots("lane-12"));
      assertThat(visit.page()).hasURL(Pattern.compile(".*/\\?station=lane-12$"));
      visit.page().reload();
      assertThat(visit.by("#lane b")).hasText("lane-12");
      visit.page().goBack();
      assertThat(visit.by("#lane b")).hasText("lane-7");
      assertThat(visit.by("#speed")).hasText(digits("lane-7"));
      visit.assertUndisturbed();
    }
  }

  @Test
  void howTheOthersStandIsToldInFewWords() {
    try (Visit visit = visit("/?station=lane-7")) {
      assertThat(visit.by("#others"))
          .hasText(
              "the others: ▲ no board yet: lane-%d, lane-%d and %d more, ● answers: %d"
                  .formatted(ANSWERING + 1, ANSWERING + 2, LANES - ANSWERING - 2, ANSWERING - 1));
      visit.by("#lane").click();
      assertThat(listed(visit, "lane-" + LANES)).containsText("▲ no board yet");
      assertThat(listed(visit, "lane-1")).containsText("● answers");
      assertThat(listed(visit, "lane-7")).hasAttribute("aria-pressed", "true");
      visit.assertUndisturbed();
    }
  }

  @Test
  void whatOthersShootDisturbsNobody() {
    try (Visit visit = visit("/?station=lane-7")) {
      assertThat(visit.by("#speed")).hasText(digits("lane-7"));
      assertThat(visit.by("#lost")).isHidden();
      AtomicInteger asked = new AtomicInteger();
      visit
          .page()
          .onRequest(request -> asked.addAndGet(request.url().contains("/api/range") ? 1 : 0));
      int before =
          Asked.get(served.at("/api/range?station=lane-3")).json().at("/session/shots").asInt();
      Until.holds(
          "ten arrows on lane 3",
          () -> range("lane-3").at("/session/shots").asInt() >= before + 10);
      // as the feed begins, and every 20 s whatever happens
      assertThat(asked.get()).isLessThanOrEqualTo(3);
      assertThat(visit.by("#speed")).hasText(digits("lane-7"));
      visit.assertUndisturbed();
    }
  }

  @Test
  void aPhoneThatWasNeverToldAStationKeepsTheOneChosenLast() {
    try (Visit visit = visit("/")) {
      assertThat(visit.by("#lane b")).hasText("lane-1");
      visit.by("#lane").click();
      listed(visit, "lane-12").click();
      assertThat(visit.by("#lane b")).hasText("lane-12");
      visit.page().navigate(served.at("/").toString());
      assertThat(visit.by("#lane b")).hasText("lane-12");
      assertThat(visit.page()).hasURL(Pattern.compile(".*/\\?station=lane-12$"));
      visit.page().navigate(served.at("/?station=lane-99").toString());
      assertThat(visit.by("#lane b")).hasText("lane-1");
      visit.assertDisturbedOnlyBy("404");
    }
  }

  @Test
  void theKeyboardIsEnough() {
    try (Visit visit = visit("/?station=lane-7")) {
      assertThat(visit.by("#lane b")).hasText("lane-7");
      visit.by("#lane").focus();
      visit.page().keyboard().press("Enter");
      for (int i = 0; i < 3; i++) {
        visit.page().keyboard().press("Tab"); // close, lane-1, lane-2
      }
      visit.page().keyboard().press("Enter");
      assertThat(visit.by("#lane b")).hasText("lane-2");
      assertThat(visit.by("#lane")).isFocused();
      visit.assertUndisturbed();
    }
  }
}
