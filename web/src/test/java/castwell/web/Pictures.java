package castwell.web;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Takes pictures to be looked at; its name keeps it out of the suite: see .ci/pictures. */
class Pictures {
  private static final Path PICTURES = Path.of("target", "pictures");

  /** How a picture is taken. */
  private record Screen(String name, int width, int height) {}

  private static final List<Screen> SCREENS =
      List.of(
          new Screen("phone", 360, 740),
          new Screen("tablet", 768, 1024),
          new Screen("desktop", 1440, 900));

  @TempDir Path folder;

  @Test
  void ofEveryPage() {
    try (Browser browser = new Browser();
        Served empty = Served.withoutBoard(folder.resolve("empty"), "range");
        Served full = Served.withoutBoard(folder.resolve("full"), "range")) {
      Workbench.fill(full);
      for (Screen screen : SCREENS) {
        for (ColorScheme colours : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
          take(browser, empty, false, screen, colours);
          take(browser, full, true, screen, colours);
        }
      }
    }
  }

  private static void take(
      Browser browser, Served served, boolean isFull, Screen screen, ColorScheme colours) {
    Workbench.pages(isFull)
        .forEach(
            (name, path) -> {
              try (Visit visit =
                  new Visit(browser, served.at(path), screen.width(), screen.height(), colours)) {
                visit.page().waitForLoadState();
                String picture =
                    "%s-%s-%s-%s.png"
                        .formatted(
                            name,
                            isFull ? "full" : "empty",
                            screen.name(),
                            colours.name().toLowerCase());
                visit
                    .page()
                    .screenshot(
                        new Page.ScreenshotOptions()
                            .setPath(PICTURES.resolve(picture))
                            .setFullPage(true));
              }
            });
  }
}
