package castwell.web.cli;

import castwell.capture.device.Port;
import castwell.web.settings.HttpAddress;
import castwell.web.settings.Settings;
import castwell.web.settings.Settings.Station;
import castwell.web.settings.SettingsFile;
import castwell.web.wiring.Daemon;
import castwell.web.wiring.Rehearsal;
import castwell.web.workbench.MenuEntry;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;

@Command(
    name = "warm-up",
    description =
        "Rehearse in passing and look at every page, so that Java can keep an archive of the"
            + " classes that are used. Keeps nothing else.")
final class WarmUpCommand implements Callable<Integer> {
  private static final double SECONDS_BETWEEN_ARROWS = 0.5;
  private static final long SEED = 1;
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private static final List<String> MORE_PAGES =
      List.of(
          "/bows/Heron",
          "/bows/Heron/card",
          "/calibration",
          "/texts.js",
          "/rules.js",
          "/api/range",
          "/api/health",
          "/api/reports/ranking",
          "/api/reports/bow/Heron",
          "/metrics");

  private static final int SHOTS = 3;

  private final HttpClient client = HttpClient.newHttpClient();

  @Override
  public Integer call() throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("castwell");
    try {
      rehearse(folder);
      Path out = folder.resolve("report.txt");
      return Castwell.run(
          "--data", folder.toString(), "report", "ranking", "--out", out.toString());
    } finally {
      delete(folder);
    }
  }

  private void rehearse(Path folder) throws IOException, InterruptedException {
    try (Daemon daemon = Daemon.open(folder)) {
      Settings settings = SettingsFile.read(folder);
      Station station = Rehearsal.station(settings);
      Rehearsal.fillRack(daemon.store(), daemon.commands(settings.capture()));
      Port port =
          Rehearsal.port(daemon.store(), station, SEED, SECONDS_BETWEEN_ARROWS, Daemon::micros);
      HttpAddress address = new HttpAddress("127.0.0.1", 0);
      try (Daemon.Running running =
          daemon.start(
              settings,
              List.of(station),
              Map.of(station.name(), port),
              address,
              true,
              died -> {
                throw new IllegalStateException(died);
              })) {
        URI page = URI.create("http://127.0.0.1:" + running.address().port() + "/");
        hearShots(page.resolve("/api/live"));
        for (MenuEntry entry : MenuEntry.values()) {
          look(page.resolve(entry.path()));
        }
        for (String more : MORE_PAGES) {
          look(page.resolve(more));
        }
      }
    }
  }

  private void hearShots(URI live) throws IOException, InterruptedException {
    HttpResponse<Stream<String>> told = client.send(request(live), BodyHandlers.ofLines());
    try (Stream<String> lines = told.body()) {
      lines.filter("event: shot"::equals).limit(SHOTS).forEach(line -> {});
    }
  }

  private void look(URI page) throws IOException, InterruptedException {
    int status = client.send(request(page), BodyHandlers.discarding()).statusCode();
    if (status != 200) {
      throw new IOException(page + " answers " + status);
    }
  }

  private static HttpRequest request(URI page) {
    return HttpRequest.newBuilder(page).timeout(PATIENCE).build();
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
