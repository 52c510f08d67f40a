package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.FullDisk;
import castwell.capture.Until;
import castwell.capture.rehearsal.RehearsalSettings;
import castwell.capture.store.Shot;
import castwell.capture.store.Store;
import castwell.capture.store.Tags;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A disk that takes nothing, and a clock that was set back, as the page and the API tell them. With
 * <code>-Dcastwell.disk=/mnt/small</code> it is that disk which is filled up: <code>
 * mount -t tmpfs -o size=16m none /mnt/small</code>.
 */
@Tag("browser")
@Timeout(300)
class TroublePageTest {
  private static Browser browser;

  @TempDir Path folder;

  @BeforeAll
  static void openBrowser() {
    browser = new Browser();
  }

  @AfterAll
  static void closeBrowser() {
    browser.close();
  }

  private static JsonNode range(Served served) {
    return Asked.get(served.at("/api/range")).json();
  }

  /** By their edges, which the board numbers without a gap. */
  private static List<Shot> stored(Served served) {
    List<Shot> shots = new ArrayList<>();
    served
        .store()
        .read(
            t -> {
              t.shots().each(shots::add);
              return shots;
            });
    shots.sort(Comparator.comparing(shot -> edges(shot).firstEdge()));
    return shots;
  }

  private static Shot.ByGates edges(Shot shot) {
    return (Shot.ByGates) shot.origin();
  }

  @Test
  void aFullDiskIsToldInRedAndNothingAnnouncedIsMissingLater() throws IOException {
    var settings = new RehearsalSettings(8, "rehearsal-1", 0, 1, 1, 0.006, 0.4);
    byte[][] seen = new byte[1][];
    Optional<Path> disk = Optional.ofNullable(System.getProperty("castwell.disk")).map(Path::of);
    Path data = disk.map(small -> small.resolve("data")).orElse(folder);
    try (Served served = Served.rehearsal(data, settings, 0);
        Visit visit = Visit.onAPhone(browser, served);
        FeedReader feed = FeedReader.after(served.at("/api/live"), 0)) {
      assertThat(visit.by("#shots > li").first()).isVisible();
      assertThat(visit.by("#trouble")).isHidden();
      Runnable look = () -> seen[0] = whileFull(served, visit, data);
      disk.ifPresentOrElse(small -> FullDisk.during(small, look), () -> FullDisk.during(look));
      assertThat(visit.by("#trouble")).isHidden();
      List<Shot> all = stored(served);
      for (int i = 1; i < all.size(); i++) { // none was lost on the way
        assertThat(edges(all.get(i)).firstEdge()).isEqualTo(edges(all.get(i - 1)).lastEdge() + 1);
      }
      Set<String> announced = new HashSet<>();
      while (!announced.containsAll(all.stream().map(Shot::shotId).toList())) {
        FeedReader.Event event = feed.next();
        if (event.kind().equals("shot")) {
          String id = event.data().path("shot_id").asText();
          // It is stored by the time anyone hears of it.
          assertThat(served.store().<Optional<Shot>>read(t -> t.shots().byShotId(id))).isPresent();
          announced.add(id);
        }
      }
      visit.assertUndisturbed();
    }
    Files.write(Path.of("target", "screenshots", "full-disk-360x740.png"), seen[0]);
  }

  private byte[] whileFull(Served served, Visit visit, Path data) {
    Until.holds("two that wait", () -> range(served).at("/stores/0/waiting").asInt() >= 2);
    int stored = stored(served).size();
    assertThat(visit.by("#trouble"))
        .hasText(
            Pattern.compile(
                "✕ (The disk of )?"
                    + data
                    + " (can't be read or written: look to its disk|is full: free some space)\\."
                    + " \\d+ shots are kept in memory only until then\\."));
    assertThat(visit.by("#trouble")).hasCSS("background-color", "rgb(139, 0, 0)");
    JsonNode station = Asked.get(served.at("/api/stations")).json().get(0);
    assertThat(station.at("/store/trouble").asText()).contains(data.toString());
    String body = "{\"station\":\"rehearsal\",\"bow\":\"Wren\",\"arrow\":null}";
    Asked refused = Asked.send("PUT", served.at("/api/tags"), body);
    assertThat(refused.status()).isEqualTo(507); // RFC 4918, 11.5: Insufficient Storage
    assertThat(refused.contentType()).contains("application/problem+json");
    assertThat(refused.detail()).contains(data.toString(), "disk");
    assertThat(stored(served)).hasSize(stored); // and nothing was shown of what isn't stored
    return visit.page().screenshot();
  }

  @Test
  void aClockThatWasSetBackIsTold() {
    try (Store store = Store.open(folder)) {
      Instant soon = Instant.now().plus(Duration.ofMinutes(30));
      store.writing(t -> t.tags().change("range", soon, Tags.Pair.NOT_KNOWN, "page"));
    }
    try (Served served = Served.withoutBoard(folder, "range");
        Visit visit = Visit.onAPhone(browser, served)) {
      assertThat(visit.by("#trouble"))
          .containsText(
              "▲ The computer's clock was set back by 30 min: shots are dated 30 min ahead");
      visit.screenshot("clock-set-back-360x740");
      visit.assertUndisturbed();
    }
  }
}
