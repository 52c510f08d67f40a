package castwell.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.OptionalLong;

/** A reader of server-sent events over a real socket (WHATWG HTML, 9.2.6). */
final class FeedReader implements AutoCloseable {
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final InputStream body;
  private final BufferedReader lines;

  /**
   * @param id empty where the event has none
   */
  record Event(OptionalLong id, String kind, String text) {
    JsonNode data() throws IOException {
      return JSON.readTree(text);
    }
  }

  private FeedReader(InputStream body) {
    this.body = body;
    this.lines = new BufferedReader(new InputStreamReader(body, StandardCharsets.UTF_8));
  }

  static FeedReader after(URI live, long id) throws IOException {
    return open(HttpRequest.newBuilder(URI.create(live + "?after=" + id)));
  }

  static FeedReader resumed(URI live, long lastEventId) throws IOException {
    return open(HttpRequest.newBuilder(live).header("Last-Event-ID", String.valueOf(lastEventId)));
  }

  static FeedReader open(HttpRequest.Builder request) throws IOException {
    try {
      HttpResponse<InputStream> answer = CLIENT.send(request.build(), BodyHandlers.ofInputStream());
      if (answer.statusCode() != 200) {
        throw new IOException("HTTP " + answer.statusCode());
      }
      String type = answer.headers().firstValue("Content-Type").orElse("");
      if (!type.startsWith("text/event-stream")) {
        throw new IOException("no event stream: " + type);
      }
      return new FeedReader(answer.body());
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Waits for the next event that has an id. */
  Event next() throws IOException {
    Event event = any();
    while (event.id().isEmpty()) {
      event = any();
    }
    return event;
  }

  private Event any() throws IOException {
    OptionalLong id = OptionalLong.empty();
    String kind = "message";
    StringBuilder data = new StringBuilder();
    while (true) {
      String line = lines.readLine();
      if (line == null) {
        throw new IOException("the feed ended");
      } else if (line.startsWith("id: ")) {
        id = OptionalLong.of(Long.parseLong(line.substring(4)));
      } else if (line.startsWith("event: ")) {
        kind = line.substring(7);
      } else if (line.startsWith("data: ")) {
        data.append(line, 6, line.length());
      } else if (line.isEmpty() && !data.isEmpty()) {
        return new Event(id, kind, data.toString());
      }
    }
  }

  @Override
  public void close() throws IOException {
    body.close();
  }
}
