package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.LoadState;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Several screens at once, one that slept, and what a page weighs. */
@Timeout(120)
class TogetherTest {
  private static final double A_SECOND = 1000;
  private static final long LARGEST_FIRST_LOAD = 300_000;
  private static final long LARGEST_LATER_LOAD = 100_000;

  @TempDir static Path folder;
  private static Browser browser;
  private static Served served;

  @BeforeAll
  static void open() {
    browser = new Browser();
    served = Served.withoutBoard(folder, "range");
    Workbench.fill(served);
  }

  @AfterAll
  static void close() {
    served.close();
    browser.close();
  }

  private static Visit visit(String path, int width, int height) {
    return new Visit(browser, served.at(path), width, height, ColorScheme.LIGHT);
  }

  private static LocatorAssertions.ContainsTextOptions withinASecond() {
    return new LocatorAssertions.ContainsTextOptions().setTimeout(A_SECOND);
  }

  @Test
  void twoPhonesAndADesktopAgreeWithinASecond() {
    try (Visit one = visit("/sessions/2026-05-10", 360, 740);
        Visit other = visit("/sessions/2026-05-10", 360, 740);
        Visit desktop = visit("/rack", 1440, 900)) {
      List<Visit> all = List.of(one, other, desktop);
      all.forEach(visit -> visit.page().waitForLoadState(LoadState.LOAD));
      String shot = served.store().read(t -> t.shots().ofSession("2026-05-10").get(0).shotId());
      assertThat(one.by("#answer")).containsText("set aside");
      Asked asked =
          Asked.send(
              "POST",
              served.at("/api/shots/" + shot + "/decision"),
              "{\"counts\":false,\"reason\":\"a gust\"}");
      assertThat(asked.status()).isEqualTo(200);
      assertThat(one.by("#ends")).containsText("a gust", withinASecond());
      assertThat(other.by("#ends")).containsText("a gust", withinASecond());
      served.desk().rack().addBow("Sycamore", Instant.EPOCH, 200, 0.7, "");
      assertThat(desktop.by("#bows")).containsText("Sycamore", withinASecond());
      all.forEach(Visit::assertUndisturbed);
    }
  }

  @Test
  void aPageThatSleptCatchesUpWithoutAHole() {
    try (Visit visit = visit("/rack", 360, 740)) {
      visit.page().waitForLoadState(LoadState.LOAD);
      visit.page().context().setOffline(true);
      for (String name : List.of("Larch", "Maple", "Osier")) {
        served.desk().rack().addBow(name, Instant.EPOCH, 200, 0.7, "");
      }
      assertThat(visit.by("#bows")).not().containsText("Osier");
      visit.page().context().setOffline(false);
      visit.page().evaluate("() => document.dispatchEvent(new Event('visibilitychange'))");
      for (String name : List.of("Larch", "Maple", "Osier")) {
        assertThat(visit.by("#bows")).containsText(name);
      }
    }
  }

  @Test
  void theRangeIsReadInMetresByWhoeverChoseThem() {
    served.desk().tag("range", Optional.of("Alder"), Optional.of("Pine"), "test");
    Asked.send("POST", served.at("/api/stations/range/readings"), "{\"speed_fps\":150}");
    try (Visit visit = visit("/", 360, 740)) {
      assertThat(visit.by("#speed")).hasText("150.0");
      assertThat(visit.by("#speed-unit")).hasText("ft/s");
      visit.by("[data-units=si]").click();
      // 150 ft/s are 45.72 m/s, 560 gr 36.29 g and 48 lb 213.5 N: NIST SP 811
      assertThat(visit.by("#speed-unit")).hasText("m/s");
      assertThat(visit.by("#speed")).hasText("45.7");
      assertThat(visit.by("#arrow")).containsText("36.29 g");
      assertThat(visit.by("#bow")).containsText("214 N at 68.6 cm");
      visit.screenshot("range-si-360x740");
      visit.by("#typed").click();
      visit.by("dialog[open] [name=speed_fps]").fill("46.5");
      visit.by("dialog[open] button.main").click();
      assertThat(visit.by("#speed")).hasText("46.5");
      visit.assertUndisturbed();
    }
  }

  /** From the address bar on, with Tab, Enter, Space and letters. */
  @Test
  void aBowIsEnteredAndPutOutOfUseByKeysAlone() {
    try (Visit visit = visit("/rack", 1024, 800)) {
      tabTo(visit, "summary", "add a bow");
      visit.page().keyboard().press("Enter");
      for (String typed : List.of("Plum", "", "44", "26")) {
        tabTo(visit, "input", "");
        if (!typed.isEmpty()) {
          visit.page().keyboard().type(typed);
        } else {
          skipDate(visit);
        }
      }
      visit.page().keyboard().press("Enter");
      assertThat(visit.by("h1")).hasText("Plum");
      tabTo(visit, "a", "reach");
      visit.page().keyboard().press("Enter");
      assertThat(visit.by("h1")).hasText("Which arrow carries enough?");
      visit.assertUndisturbed();
    }
  }

  private static void skipDate(Visit visit) {
    while ("date".equals(visit.page().evaluate("() => document.activeElement.type"))) {
      visit.page().keyboard().press("Tab"); // day, month, year
    }
    visit.page().keyboard().press("Shift+Tab");
  }

  private static void tabTo(Visit visit, String tag, String words) {
    for (int i = 0; i < 120; i++) {
      visit.page().keyboard().press("Tab");
      boolean isThere =
          (Boolean)
              visit
                  .page()
                  .evaluate(
                      "([tag, words]) => document.activeElement.matches(tag) && document.activeElement.textContent.includes(words)",
                      List.of(tag, words));
      if (isThere) {
        return;
      }
    }
    throw new AssertionError("120 times Tab don't lead to " + tag + " " + words);
  }

  /** What came over the wire, compressed as it came. */
  @Test
  void theFirstLoadIsLightAndLaterOnesLighter() {
    Map<String, long[]> heavy = new HashMap<>();
    for (String path : List.of("/", "/rack", "/bows/Rowan", "/sessions/2026-05-10", "/rework")) {
      try (Visit visit = visit("/enter", 360, 740)) {
        CDPSession wire = visit.page().context().newCDPSession(visit.page());
        AtomicLong bytes = new AtomicLong();
        wire.send("Network.enable");
        wire.on(
            "Network.loadingFinished",
            (JsonObject event) -> bytes.addAndGet(event.get("encodedDataLength").getAsLong()));
        visit.page().navigate(served.at(path).toString());
        visit.page().waitForLoadState(LoadState.LOAD);
        long first = bytes.getAndSet(0);
        visit.page().navigate(served.at(path).toString());
        visit.page().waitForLoadState(LoadState.LOAD);
        heavy.put(path, new long[] {first, bytes.get()});
        visit.assertUndisturbed();
      }
    }
    heavy.forEach(
        (path, bytes) -> {
          System.out.println(path + ": " + bytes[0] + " bytes first, " + bytes[1] + " later");
          assertThat(bytes[0]).as(path).isPositive().isLessThan(LARGEST_FIRST_LOAD);
          assertThat(bytes[1]).as(path).isLessThan(LARGEST_LATER_LOAD);
        });
  }

  @Test
  void namesAreShownAsTheyAreWritten() {
    String name = "<b>Yew & \"Elm\"</b> 100% #1?";
    served.desk().rack().addBow(name, Instant.EPOCH, 200, 0.7, "");
    served.desk().rack().addArrow(name, 0.03, OptionalDouble.empty(), OptionalDouble.empty());
    served.desk().tag("range", Optional.of(name), Optional.of(name), "test");
    try (Visit visit = visit("/rack", 1024, 740)) {
      visit.by("#bows a").filter(new Locator.FilterOptions().setHasText(name)).click();
      assertThat(visit.by("h1")).hasText(name);
      visit.by("a:has-text('bow card')").click();
      assertThat(visit.by("h1")).hasText(name);
      visit.page().navigate(served.at("/arrows").toString());
      assertThat(visit.by("#arrows")).containsText(name);
      visit.assertUndisturbed();
    }
  }
}
