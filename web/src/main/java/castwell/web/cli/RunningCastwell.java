package castwell.web.cli;

import castwell.capture.view.Json;
import castwell.capture.view.health.WholeHealth;
import castwell.web.settings.HttpAddress;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;

/**
 * The Castwell that runs over the same data folder, asked from the same computer.
 *
 * @param key the page's key, where it needs one
 */
record RunningCastwell(HttpAddress address, Optional<String> key) {
  private static final Duration PATIENCE = Duration.ofSeconds(10);
  private static final Set<String> EVERY_ADDRESS = Set.of("0.0.0.0", "::");

  /** A server that listens at every address also listens at this computer's own. */
  RunningCastwell {
    if (EVERY_ADDRESS.contains(address.host())) {
      address = new HttpAddress(HttpAddress.LOOPBACK.host(), address.port());
    }
  }

  /** The health as the running program tells it; empty where it doesn't answer. */
  Optional<WholeHealth> health() {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://" + address + "/api/health")).timeout(PATIENCE);
    key.ifPresent(word -> request.header("Authorization", "Bearer " + word));
    try {
      HttpResponse<String> answer =
          HttpClient.newBuilder()
              .connectTimeout(PATIENCE)
              .build()
              .send(request.build(), BodyHandlers.ofString());
      return answer.statusCode() == 200
          ? Optional.of(Json.read(answer.body(), WholeHealth.class))
          : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }
}
