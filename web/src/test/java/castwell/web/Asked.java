package castwell.web;

import castwell.capture.Until;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;

/** One answer of the API, over a real socket. */
record Asked(int status, String contentType, String text) {
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final JsonMapper JSON = JsonMapper.builder().build();

  static Asked get(URI uri) {
    return send(HttpRequest.newBuilder(uri));
  }

  static Asked send(String method, URI uri, String body) {
    return send(
        HttpRequest.newBuilder(uri)
            .method(method, BodyPublishers.ofString(body))
            .header("Content-Type", "application/json"));
  }

  static Asked send(HttpRequest.Builder request) {
    try {
      HttpResponse<String> answer =
          CLIENT.send(request.timeout(Until.PATIENCE).build(), BodyHandlers.ofString());
      return new Asked(
          answer.statusCode(),
          answer.headers().firstValue("Content-Type").orElse(""),
          answer.body());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  JsonNode json() {
    return read(text);
  }

  static JsonNode read(String json) {
    try {
      return JSON.readTree(json);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  String detail() {
    return json().path("detail").asText();
  }
}
