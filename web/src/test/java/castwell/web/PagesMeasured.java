package castwell.web;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.Arrays;
import java.util.List;
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
    measure(new OverShots()); // lest the first of them meet a cold program
    OverShots table = new OverShots();
    measure(table);
    table.print("%.1f");
  }

  private static void measure(OverShots table) throws IOException, InterruptedException {
    for (int shots : table.sizes()) {
      try (Served served = Served.withoutBoard(MeasuredStore.of(shots), "range")) {
        for (String page : PAGES) {
          table.note(page, median(served, page.replace("LAST", last(served))));
        }
      }
    }
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
