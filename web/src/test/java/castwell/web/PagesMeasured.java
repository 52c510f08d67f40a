package castwell.web;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * How long every page takes over how many shots: a Markdown table of medians in milliseconds, one
 * column a store. Its name keeps it out of the suite: see .ci/measure.
 */
class PagesMeasured {
  private static final int WARM_UP = 5;
  private static final int TIMES = 9;

  private static final List<String> PAGES =
      List.of(
          "/api/range",
          "/rack",
          "/bows/bow%201",
          "/bows/bow%201/card",
          "/bows/bow%201/speed",
          "/arrows",
          "/sessions",
          "/sessions/LAST",
          "/rework?bow=bow%201",
          "/reach?momentum=0.4",
          "/plan?bow=bow%201",
          "/calibration",
          "/data",
          "/api/reports/ranking",
          "/api/reports/bow/bow%201");

  @Test
  void overSoManyShots() throws IOException, InterruptedException {
    List<Integer> sizes =
        Stream.of(System.getProperty("castwell.shots", "0 1000").split(" "))
            .map(Integer::valueOf)
            .toList();
    measure(sizes); // lest the first of them meet a cold program
    Map<String, List<Double>> rows = measure(sizes);
    System.out.println(
        "| page | " + String.join(" | ", sizes.stream().map(n -> n + " shots").toList()) + " |");
    System.out.println("|---" + "|---:".repeat(sizes.size()) + "|");
    rows.forEach(
        (page, times) ->
            System.out.println(
                "| "
                    + page
                    + " | "
                    + String.join(" | ", times.stream().map(ms -> "%.1f".formatted(ms)).toList())
                    + " |"));
  }

  private static Map<String, List<Double>> measure(List<Integer> sizes)
      throws IOException, InterruptedException {
    Map<String, List<Double>> rows = new LinkedHashMap<>();
    for (int shots : sizes) {
      try (Served served = Served.withoutBoard(MeasuredStore.of(shots), "range")) {
        for (String page : PAGES) {
          double ms = median(served, page.replace("LAST", last(served)));
          rows.computeIfAbsent(page, p -> new ArrayList<>()).add(ms);
        }
      }
    }
    return rows;
  }

  private static String last(Served served) {
    return served.store().read(t -> t.sessions().some(0, 1)).stream()
        .map(session -> session.name())
        .findFirst()
        .orElse("none");
  }

  private static double median(Served served, String page)
      throws IOException, InterruptedException {
    HttpClient client = HttpClient.newHttpClient();
    HttpRequest request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + served.httpPort() + page)).build();
    double[] ms = new double[TIMES];
    for (int i = -WARM_UP; i < TIMES; i++) {
      long before = System.nanoTime();
      int status = client.send(request, BodyHandlers.ofByteArray()).statusCode();
      if (status != 200 && !page.contains("none")) {
        System.err.println(page + ": " + status);
      }
      if (i >= 0) {
        ms[i] = (System.nanoTime() - before) / 1e6;
      }
      if ((System.nanoTime() - before) / 1e9 > 2) {
        return (System.nanoTime() - before) / 1e6; // one is enough of what is that slow
      }
    }
    Arrays.sort(ms);
    return ms[TIMES / 2];
  }
}
