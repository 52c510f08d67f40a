package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.measure.Measures;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Several screens at once, and what a page weighs. */
@Tag("browser")
@Timeout(300)
class TogetherTest {
  /** How soon they agree is to be seen on a quiet machine alone: -Dcastwell.agree_ms=1000 there. */
  private static final long AGREED_MS =
      Long.getLong("castwell.agree_ms", Until.PATIENCE.toMillis());

  private static final long LARGEST_FIRST_LOAD = 300_000;
  private static final long LARGEST_LATER_LOAD = 50_000;

  private static final String SESSION = "/sessions/2026-05-10";

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

  private static LocatorAssertions.ContainsTextOptions soon() {
    return new LocatorAssertions.ContainsTextOptions().setTimeout(AGREED_MS);
  }

  @Test
  void twoPhonesAndADesktopAgree() {
    try (Visit one = visit("/", 360, 740);
        Visit other = visit(SESSION, 360, 740);
        Visit desktop = visit("/rack", 1440, 900)) {
      assertThat(other.by("#ends li").first()).containsText("Alder · Birch");
      assertThat(desktop.by("#bows")).containsText("85 since");

      served.commands().bows().add("Sycamore", Instant.EPOCH, 200, 0.7, "");
      assertThat(desktop.by("#bows")).containsText("Sycamore", soon());

      assertDone(
          "/api/shots/" + first() + "/tags",
          """
          {"bow":"Hazel","arrow":"Ramin","why":"the wrong line"}""");
      assertThat(other.by("#ends li").first()).containsText("Hazel · Ramin", soon());
      assertThat(desktop.by("#bow-Alder")).containsText("84 since", soon());

      assertDone("/api/shots/" + first() + "/decision", "{\"counts\":false,\"reason\":\"a gust\"}");
      assertThat(other.by("#ends li").first()).containsText("a gust", soon());

      served.commands().tag("range", Optional.of("Alder"), Optional.of("Pine"), "test");
      assertThat(one.by("#bow")).containsText("Alder", soon());

      assertDone("/api/stations/range/readings", "{\"speed_fps\":137}");
      assertThat(one.by("#speed")).containsText("137", soon());
      assertThat(desktop.by("#bow-Alder")).containsText("85 since", soon());
      List.of(one, other, desktop).forEach(Visit::assertUndisturbed);
    }
  }

  private static String first() {
    return served.store().read(t -> t.shots().ofSession("2026-05-10").get(0).shotId());
  }

  private static void assertDone(String path, String body) {
    Asked asked = Asked.send("POST", served.at(path), body);
    assertThat(asked.status()).as("%s", asked.json()).isBetween(200, 299);
  }

  @Test
  void theRangeIsReadInMetresByWhoeverChoseThem() {
    served.commands().tag("range", Optional.of("Alder"), Optional.of("Pine"), "test");
    Asked.send("POST", served.at("/api/stations/range/readings"), "{\"speed_fps\":150}");
    try (Visit visit = visit("/", 360, 740)) {
      assertThat(visit.by("#speed")).hasText("150.0");
      assertThat(visit.by("#speed-unit")).hasText("ft/s");
      visit.by("[data-units=si]").click();
      // 150 ft/s are 45.72 m/s, 563 gr 36.48 g and 47.6 lb 211.7 N: NIST SP 811
      assertThat(visit.by("#speed-unit")).hasText("m/s");
      assertThat(visit.by("#speed")).hasText("45.7");
      assertThat(visit.by("#arrow")).containsText("36.48 g");
      assertThat(visit.by("#bow")).containsText("212 N at 68.1 cm");
      visit.screenshot("range-si-360x740");
      visit.by("#typed").click();
      visit.by("dialog[open] [name=speed_fps]").fill("46.5");
      visit.by("dialog[open] button.main").click();
      assertThat(visit.by("#speed")).hasText("46.5");
      visit.assertUndisturbed();
    }
  }

  /** What came over the wire, compressed as it came. */
  @Test
  void theFirstLoadIsLightAndLaterOnesLighter() {
    Map<String, long[]> heavy = new TreeMap<>();
    try (Visit visit = visit("/enter", 360, 740)) {
      CDPSession wire = visit.page().context().newCDPSession(visit.page());
      AtomicLong bytes = new AtomicLong();
      wire.send("Network.enable");
      wire.on(
          "Network.loadingFinished",
          (JsonObject event) -> bytes.addAndGet(event.get("encodedDataLength").getAsLong()));
      for (String path : Workbench.pages(true).values()) {
        wire.send("Network.clearBrowserCache");
        heavy.put(path, new long[] {load(visit, path, bytes), load(visit, path, bytes)});
      }
      visit.assertUndisturbed();
    }
    heavy.forEach(
        (path, bytes) -> {
          System.out.println(path + ": " + bytes[0] + " bytes first, " + bytes[1] + " later");
          assertThat(bytes[0]).as(path).isPositive().isLessThan(LARGEST_FIRST_LOAD);
          assertThat(bytes[1]).as(path).isLessThan(LARGEST_LATER_LOAD);
        });
  }

  private static long load(Visit visit, String path, AtomicLong bytes) {
    visit.page().navigate("about:blank");
    bytes.set(0);
    visit.page().navigate(served.at(path).toString());
    Workbench.settle(visit, path);
    return bytes.get();
  }

  @Test
  void namesAreShownAsTheyAreWritten() {
    String name = "<b>Yew & \"Elm\"</b> 100% #1?";
    served.commands().bows().add(name, Instant.EPOCH, 200, 0.7, "");
    served.commands().arrows().add(name, 0.03, Measures.none());
    served.commands().tag("range", Optional.of(name), Optional.of(name), "test");
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
