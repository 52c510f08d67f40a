package castwell.capture.publish;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import castwell.capture.measure.Measures;
import castwell.capture.publish.broker.Broker;
import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.capture.publish.broker.Message;
import castwell.capture.store.Rows;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Who shoots what, said and told over the broker. */
@Tag("broker")
@Timeout(300)
class TagsOverBrokerTest {
  private static final String TAGS = "castwell/range/tags";
  private static final String REFUSED = "castwell/range/tags/refused";

  @TempDir Path folder;
  private Mosquitto mosquitto;
  private PublishedRange range;
  private Subscriber subscriber;
  private BrokerConnection other;

  @BeforeEach
  void begin() throws BrokerUnavailable {
    mosquitto = Mosquitto.start(folder.resolve("broker"));
    subscriber = Subscriber.to(mosquitto, "castwell/#");
    range = new PublishedRange(folder.resolve("data"), PublishedRange.at(mosquitto.url()));
    range.commands().bows().add("heron", Rows.NOON, 200, 0.7, "");
    range.commands().arrows().add("heavy", 0.04, Measures.none());
    other =
        BrokerConnection.open(
            Broker.open(mosquitto.url()), "other", Optional.empty(), message -> {}, () -> {});
    range.awaitConnected();
  }

  @AfterEach
  void end() {
    other.close();
    range.close();
    subscriber.close();
    mosquitto.close();
  }

  private void say(String payload) throws BrokerUnavailable {
    other.send(Message.once("castwell/range/tags/set", payload)).await();
  }

  private void awaitTags(String bow, String arrow) {
    Until.holds(
        bow + " and " + arrow,
        () ->
            subscriber.hasHeard(
                m ->
                    m.topic().equals(TAGS)
                        && m.text().contains("\"bow\":" + bow)
                        && m.text().contains("\"arrow\":" + arrow)));
  }

  @Test
  void whatIsSaidHoldsAndIsToldToAllAndKept() throws Exception {
    say("{\"bow\": \"heron\", \"arrow\": \"heavy\"}");
    awaitTags("\"heron\"", "\"heavy\"");
    assertThat(range.store().read(t -> t.tags().at("range", Clock.systemUTC().instant())).bowId())
        .isPresent();
    say("{\"bow\": \"heron\", \"arrow\": null}");
    awaitTags("\"heron\"", "null");
    assertThat(subscriber.texts(REFUSED)).isEmpty();
    try (Subscriber later = Subscriber.to(mosquitto, TAGS, "later")) {
      Until.holds("what was kept", () -> later.hasHeard(Message::retained));
      assertThat(later.texts(TAGS).get(0)).contains("\"heron\"").contains("\"arrow\":null");
    }
  }

  @Test
  void whatIsSaidOnThePageIsToldToo() {
    range.commands().tag("range", Optional.of("heron"), Optional.empty(), "page");
    awaitTags("\"heron\"", "null");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"bow\": \"crow\", \"arrow\": null} | There is no bow named crow",
        "{\"bow\": \"heron\"} | arrow",
      })
  void whatCantBeIsRefusedInOneSentenceAndCounted(String payload, String why) throws Exception {
    say(payload);
    Until.holds("a refusal", () -> !subscriber.texts(REFUSED).isEmpty());
    assertThat(subscriber.texts(REFUSED).get(0)).contains(why);
    assertThat(range.state().refused()).isEqualTo(1);
    assertThat(range.state().connected()).isTrue();
    say("{\"bow\": \"heron\", \"arrow\": null}");
    awaitTags("\"heron\"", "null");
  }

  @Test
  void noBytesWhateverEndIt() throws Exception {
    byte[] notText = {(byte) 0xFF, 0, (byte) 0xC0};
    other.send(new Message("castwell/range/tags/set", notText, 1, false)).await();
    say("[".repeat(900));
    say("x".repeat(100_000));
    Until.holds("three refusals", () -> subscriber.texts(REFUSED).size() == 3);
    assertThat(subscriber.texts(REFUSED).get(2)).contains("tags/set");
    assertThat(range.state().refused()).isEqualTo(3);
  }

  @Test
  void whatTheBrokerKeptFromBeforeDoesNotTagAnew() throws Exception {
    other
        .send(Message.kept("castwell/range/tags/set", "{\"bow\": \"heron\", \"arrow\": null}"))
        .await();
    awaitTags("\"heron\"", "null");
    range.commands().tag("range", Optional.empty(), Optional.empty(), "page");
    awaitTags("null", "null");
    int known = subscriber.texts(TAGS).size();
    mosquitto.stop();
    mosquitto.start();
    Until.holds("told again", () -> subscriber.texts(TAGS).size() > known);
    range.shoot(1);
    range.awaitAllHeardBy(subscriber);
    assertThat(range.store().read(t -> t.tags().at("range", Clock.systemUTC().instant())).bowId())
        .isEmpty();
  }
}
