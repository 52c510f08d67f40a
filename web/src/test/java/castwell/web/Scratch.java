package castwell.web;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.*;
import java.util.*;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class Scratch {
  @TempDir Path folder;

  @Test
  void shots() {
    try (Browser browser = new Browser();
        Served full = Workbench.serve(folder.resolve("full"))) {
      Workbench.fill(full);
      for (Workbench.Screen screen : Workbench.SCREENS) {
        if (screen.name().contains("tablet")) continue;
        try (Visit visit = new Visit(browser, full.at("/enter"), screen, ColorScheme.LIGHT)) {
          for (String path :
              List.of(
                  "/rack",
                  "/bows/Rowan",
                  "/sessions",
                  "/sessions/2026-05-10",
                  "/reach?like_bow=Alder&like_arrow=Pine",
                  "/rework?bow=Rowan",
                  "/plan",
                  "/bows/Rowan/card")) {
            visit.page().navigate(full.at(path).toString());
            Workbench.settle(visit, path);
            visit
                .page()
                .screenshot(
                    new Page.ScreenshotOptions()
                        .setPath(
                            Path.of(
                                "/tmp/shots",
                                screen.name() + path.replaceAll("[/?=&]", "_") + ".png"))
                        .setFullPage(true));
          }
        }
      }
    }
  }
}
