package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.capture.Until;
import castwell.capture.publish.Mosquitto;
import castwell.capture.publish.Subscriber;
import castwell.capture.publish.broker.Message;
import castwell.capture.rehearsal.RehearsalSettings;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a subscriber of a real broker hears of the real daemon, against the schemas it serves. */
@Tag("broker")
@Timeout(300)
class PublishedTest {
  private static final String STATION = "castwell/rehearsal/";
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @TempDir Path folder;

  private Served rehearse(String mqtt) throws IOException {
    Files.writeString(folder.resolve("castwell.toml"), "[mqtt]\n" + mqtt);
    long seed = Seed.of(PublishedTest.class);
    return Served.rehearsal(
        folder, new RehearsalSettings(seed, "rehearsal-1", 0, 0.5, 3600, 0.006, 0.2), 0);
  }

  private static void put(Served served, String method, String path, String body) {
    assertThat(Asked.send(method, served.at(path), body).status()).isBetween(200, 201);
  }

  private static void await(Subscriber subscriber, String what, Predicate<Message> wanted) {
    Until.holds(what, () -> subscriber.hasHeard(wanted));
  }

  private static Predicate<Message> on(String topic, String word) {
    return message -> message.topic().equals(STATION + topic) && message.text().contains(word);
  }

  @Test
  void everyPayloadIsAsItsSchemaSaysAndAShotAsTheApiTellsIt() throws Exception {
    try (Mosquitto mosquitto = Mosquitto.start(folder.resolve("broker"));
        Subscriber subscriber = Subscriber.to(mosquitto, "castwell/#")) {
      Map<String, JsonSchema> schemas = new HashMap<>();
      try (Served served = rehearse("url = \"" + mosquitto.url() + "\"")) {
        await(subscriber, "a shot", on("shot", "rehearsal-1"));
        await(subscriber, "health", on("health", "light A"));
        put(served, "PUT", "/api/tags", "{\"station\": \"rehearsal\", \"bow\": null}");
        await(subscriber, "tags", on("tags", "\"bow\":null"));
        put(served, "POST", "/api/sessions", "{\"station\": \"rehearsal\"}");
        await(subscriber, "a refresh", on("refresh", "\"shots\""));
        put(served, "POST", "/api/arrows", "{\"name\": \"new one\", \"mass_gr\": 500}");
        await(subscriber, "a refresh", on("refresh", "\"rack\""));
        mosquitto.say(STATION + "tags/set", "{\"bow\": 1}");
        await(subscriber, "a refusal", on("tags/refused", "these two fields"));
        for (String name :
            List.of("shot", "refresh", "status", "tags", "tags-refused", "health", "tags-set")) {
          schemas.put(name, schema(served, name));
        }
        sameAsTheApi(served, subscriber);
      }
      await(subscriber, "leave", on("status", "\"offline\""));
      for (Message message : subscriber.heard()) {
        String name = message.topic().substring(STATION.length()).replace('/', '-');
        if (schemas.containsKey(name) && !name.equals("tags-set")) {
          assertThat(schemas.get(name).validate(message.text(), InputFormat.JSON))
              .as("%s: %s", name, message.text())
              .isEmpty();
        }
      }
      assertThat(schemas.get("tags-set").validate("{\"bow\": 1}", InputFormat.JSON)).hasSize(2);
    }
  }

  private static JsonSchema schema(Served served, String name) {
    Asked asked = Asked.get(served.at("/api/schemas/" + name + ".json"));
    assertThat(asked.contentType()).startsWith("application/schema+json");
    JsonSchemaFactory factory = JsonSchemaFactory.getInstance(VersionFlag.V202012);
    JsonSchema metaSchema =
        factory.getSchema(java.net.URI.create("https://json-schema.org/draft/2020-12/schema"));
    assertThat(metaSchema.validate(asked.json())).as(name).isEmpty();
    return factory.getSchema(asked.json());
  }

  private static void sameAsTheApi(Served served, Subscriber subscriber) throws IOException {
    long events = served.store().read(t -> t.feed().last());
    List<String> shots = subscriber.texts(STATION + "shot");
    ObjectNode published = (ObjectNode) JSON.readTree(shots.get(0));
    assertThat(published.remove("event").asLong()).isBetween(1L, events);
    String id = published.path("shot_id").asText();
    JsonNode told = Asked.get(served.at("/api/shots/" + id)).json().path("shot");
    // Found when it is read, by what else was shot.
    ((ObjectNode) told).remove(List.of("misfit", "stray"));
    assertThat(published.fieldNames()).toIterable().containsExactlyElementsOf(told::fieldNames);
    assertThat(published.path("fired_at")).isEqualTo(told.path("fired_at"));
    assertThat(published.path("bow")).isEqualTo(told.path("bow"));
  }

  @Test
  void withoutABrokerNothingOfItRuns() throws Exception {
    try (Served served = rehearse("")) {
      assertThat(Asked.get(served.at("/api/broker")).json()).isEmpty();
      assertThat(Thread.getAllStackTraces().keySet())
          .extracting(Thread::getName)
          .noneMatch(name -> name.matches("(?i).*mqtt.*"));
    }
  }

  @Test
  void settingsThatCantBeKeepNothingFromStarting() throws Exception {
    try (Served served = rehearse("url = \"http://broker\"\npassword = \"hush\"")) {
      Until.holds(
          "what is wrong is said",
          () -> broker(served).path("sentence").asText().contains("user and password"));
      Until.holds("shots wait", () -> broker(served).path("waiting").asLong() > 0);
      assertThat(broker(served).path("connected").asBoolean()).isFalse();
      assertThat(broker(served).toString()).doesNotContain("hush");
    }
  }

  private static JsonNode broker(Served served) {
    return Asked.get(served.at("/api/broker")).json().path(0);
  }
}
