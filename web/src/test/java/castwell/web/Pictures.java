package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static java.util.Locale.ROOT;

import castwell.capture.rehearsal.RehearsalSettings;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Takes pictures to be looked at; its name keeps it out of the suite: see .ci/pictures. */
class Pictures {
  private static final Path PICTURES = Path.of("target", "pictures");
  private static final Path README = Path.of("pictures");

  @TempDir Path folder;

  @Test
  void ofEveryPage() {
    try (Browser browser = new Browser();
        Served empty = Workbench.serve(folder.resolve("empty"));
        Served full = Workbench.serve(folder.resolve("full"))) {
      Workbench.fill(full);
      for (Workbench.Screen screen : Workbench.SCREENS) {
        for (ColorScheme colours : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
          take(browser, empty, false, screen, colours);
          take(browser, full, true, screen, colours);
        }
      }
    }
  }

  /** A rehearsed end, and a bow whose tips were narrowed. */
  @Test
  void forTheReadme() {
    RehearsalSettings end = new RehearsalSettings(3, "rehearsal-1", 0, 2, 3600, 0.006, 0);
    try (Browser browser = new Browser();
        Served range = Served.rehearsal(folder.resolve("range"), end, 0);
        Served rack = Workbench.serve(folder.resolve("rack"))) {
      try (Visit visit = Visit.onAPhone(browser, range)) {
        Workbench.settle(visit, "/");
        assertThat(visit.by("#shots > li").nth(5)).isVisible();
        take(visit, README.resolve("range.png"), false);
      }
      Workbench.fill(rack);
      try (Visit visit = Visit.onAPhone(browser, rack)) {
        visit.page().setViewportSize(800, 1000);
        visit.page().navigate(rack.at("/bows/Rowan").toString());
        Workbench.settle(visit, "/bows/Rowan");
        take(visit, README.resolve("bow.png"), false);
      }
    }
  }

  private static void take(
      Browser browser,
      Served served,
      boolean isFull,
      Workbench.Screen screen,
      ColorScheme colours) {
    String how =
        "-%s-%s-%s"
            .formatted(isFull ? "full" : "empty", screen.name(), colours.name().toLowerCase(ROOT));
    try (Visit visit = new Visit(browser, served.at("/enter"), screen, colours)) {
      Workbench.pages(isFull)
          .forEach(
              (name, path) -> {
                visit.page().navigate(served.at(path).toString());
                Workbench.settle(visit, path);
                take(visit, name + how, true);
              });
      visit.page().navigate(served.at("/").toString());
      Workbench.sheets(isFull)
          .forEach(
              (name, button) -> {
                Workbench.openSheet(visit, button);
                take(visit, name + how, false);
                visit.page().keyboard().press("Escape");
              });
    }
  }

  private static void take(Visit visit, String name, boolean whole) {
    take(visit, PICTURES.resolve(name + ".png"), whole);
  }

  private static void take(Visit visit, Path file, boolean whole) {
    visit.page().screenshot(new Page.ScreenshotOptions().setPath(file).setFullPage(whole));
  }
}
