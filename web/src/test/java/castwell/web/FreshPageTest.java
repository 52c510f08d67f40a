package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Pages that are kept fresh: after a sleep without a hole, and without taking anything from
 * anybody's hands.
 */
@Tag("browser")
@Timeout(300)
class FreshPageTest {
  private static final String AN_HOUR = "01:00:00";
  private static final String SHOW =
      "() => { Object.defineProperty(document, 'hidden', {value: %s, configurable: true});"
          + " document.dispatchEvent(new Event('visibilitychange')); }";

  @TempDir Path folder;
  private static Browser browser;

  @BeforeAll
  static void openBrowser() {
    browser = new Browser();
  }

  @AfterAll
  static void closeBrowser() {
    browser.close();
  }

  private static Visit filled(Served served) {
    Workbench.fill(served);
    return new Visit(
        browser, served.at("/sessions/2026-05-10"), Workbench.PHONE, ColorScheme.LIGHT);
  }

  private static void assertDone(Served served, String path, String body) {
    Asked asked = Asked.send("POST", served.at(path), body);
    assertThat(asked.status()).as("%s", asked.json()).isBetween(200, 299);
  }

  @Test
  void aPageThatSleptForAnHourCatchesUpWithoutAHole() {
    List<String> names = List.of("Larch", "Maple", "Osier");
    List<String> speeds = List.of("151", "152", "153");
    Path home = folder.resolve("asleep");
    Visit rack;
    Visit range;
    int port;
    try (Served first = Served.withoutBoard(home, "range")) {
      port = first.httpPort();
      rack = asleep(first, "/rack");
      range = asleep(first, "/");
      rack.page().context().setOffline(true);
      range.page().context().setOffline(true);
    } // the feeds break off
    try (rack;
        range) {
      List<Visit> both = List.of(rack, range);
      try (Served second = Served.again(home, "range", port)) {
        for (int i = 0; i < names.size(); i++) {
          second.commands().bows().add(names.get(i), Instant.EPOCH, 200, 0.7, "");
          assertDone(
              second,
              "/api/stations/range/readings",
              "{\"speed_fps\":%s}".formatted(speeds.get(i)));
        }
        both.forEach(FreshPageTest::wake);
        for (int i = 0; i < names.size(); i++) {
          assertThat(rack.by("#bows")).containsText(names.get(i));
          assertThat(range.by("#shots")).containsText(speeds.get(i));
        }
        assertThat(range.by("#lost")).isHidden();
        assertThat(rack.by("#stale")).isHidden();
        second.commands().bows().add("Poplar", Instant.EPOCH, 200, 0.7, "");
        assertThat(rack.by("#bows")).containsText("Poplar");
      }
      both.forEach(visit -> visit.assertDisturbedOnlyBy("net::ERR_")); // told of the absent server
    }
  }

  private static void wake(Visit visit) {
    assertThat(visit.by("#stale:visible, #lost:visible")).hasCount(1);
    visit.page().clock().fastForward(AN_HOUR);
    visit.page().context().setOffline(false);
    visit.page().evaluate(SHOW.formatted(false));
  }

  /** A page with a clock of its own, in somebody's pocket. */
  private static Visit asleep(Served served, String path) {
    Visit visit = new Visit(browser, served.at("/enter"), Workbench.PHONE, ColorScheme.LIGHT);
    visit.page().clock().install();
    visit.page().navigate(served.at(path).toString());
    Workbench.settle(visit, path);
    visit.page().evaluate(SHOW.formatted(true));
    return visit;
  }

  @Test
  void whatSomebodyTicksAndTypesStaysWhereItIsWhenThePageChanges() {
    try (Served full = Served.withoutBoard(folder.resolve("full"), "range");
        Visit visit = filled(full)) {
      Locator rows = visit.by("#ends li");
      rows.nth(3).locator("[data-shot]").check();
      rows.nth(6).locator("summary").click();
      rows.nth(6).locator("[name=reason]").fill("plucked");
      rows.nth(8).locator("summary").click();
      rows.nth(8).locator("summary").evaluate("summary => { summary.mark = 'the same'; }");
      double before = rows.nth(8).boundingBox().y;
      String shot = full.store().read(t -> t.shots().ofSession("2026-05-10").get(0).shotId());
      assertDone(
          full, "/api/shots/" + shot + "/decision", "{\"counts\":false,\"reason\":\"a squall\"}");
      assertThat(rows.first()).containsText("a squall");
      assertThat(rows.nth(3).locator("[data-shot]")).isChecked();
      assertThat(rows.nth(6).locator("[name=reason]")).hasValue("plucked");
      assertThat(rows.nth(8).locator("summary")).isFocused();
      assertThat(rows.nth(8).locator("summary")).hasJSProperty("mark", "the same");
      assertThat(rows.nth(8).boundingBox().y).isEqualTo(before);
      visit.assertUndisturbed();
    }
  }
}
