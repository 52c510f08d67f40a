package castwell.web;

import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * How long a page takes in the browser of somebody who has looked at others before: from asking for
 * it until it is loaded, scripts and styles too, by the browser's own clock (Navigation Timing
 * Level 2, loadEventEnd). See .ci/measure.
 */
class LoadsMeasured {
  private static final int WARM_UP = 3;
  private static final int TIMES = 9;
  private static final List<String> PAGES =
      List.of(
          "/",
          "/rack",
          "/bows/bow%201",
          "/arrows",
          "/sessions",
          "/rework?bow=bow%201",
          "/reach?momentum=0.4",
          "/plan?bow=bow%201",
          "/calibration",
          "/data");

  @Test
  void overSoManyShots() throws IOException {
    OverShots table = new OverShots();
    try (Browser browser = new Browser()) {
      for (int shots : table.sizes()) {
        try (Served served = Served.withoutBoard(MeasuredStore.of(shots), "range");
            Visit visit = new Visit(browser, served.at("/"), 360, 740, ColorScheme.LIGHT)) {
          for (String page : PAGES) {
            // There is no bow on an empty rack: the rack says so.
            String asked = shots == 0 && page.startsWith("/bows") ? "/rack" : page;
            table.note(page, median(visit, served.at("/").resolve(asked).toString()));
          }
        }
      }
    }
    table.print("%.0f");
  }

  private static double median(Visit visit, String address) {
    List<Double> ms = new ArrayList<>();
    for (int i = -WARM_UP; i < TIMES; i++) {
      visit.page().navigate(address);
      Object took =
          visit.page().evaluate("() => performance.getEntriesByType('navigation')[0].loadEventEnd");
      if (i >= 0) {
        ms.add(((Number) took).doubleValue());
      }
    }
    ms.sort(null);
    return ms.get(TIMES / 2);
  }
}
