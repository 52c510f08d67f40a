package castwell.web;

import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
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
    List<Integer> sizes =
        Stream.of(System.getProperty("castwell.shots", "0 1000").split(" "))
            .map(Integer::valueOf)
            .toList();
    Map<String, List<Double>> rows = new LinkedHashMap<>();
    try (Browser browser = new Browser()) {
      for (int shots : sizes) {
        try (Served served = Served.withoutBoard(MeasuredStore.of(shots), "range");
            Visit visit = new Visit(browser, served.at("/"), 360, 740, ColorScheme.LIGHT)) {
          for (String page : PAGES) {
            // There is no bow on an empty rack: the rack says so.
            String asked = shots == 0 && page.startsWith("/bows") ? "/rack" : page;
            rows.computeIfAbsent(page, p -> new ArrayList<>())
                .add(median(visit, served.at("/").resolve(asked).toString()));
          }
        }
      }
    }
    System.out.println(
        "| page | " + String.join(" | ", sizes.stream().map(n -> n + " shots").toList()) + " |");
    System.out.println("|---" + "|---:".repeat(sizes.size()) + "|");
    rows.forEach(
        (page, times) ->
            System.out.println(
                "| "
                    + page
                    + " | "
                    + String.join(" | ", times.stream().map(ms -> "%.0f".formatted(ms)).toList())
                    + " |"));
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
