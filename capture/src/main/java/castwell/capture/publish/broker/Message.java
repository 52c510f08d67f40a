package castwell.capture.publish.broker;

import java.nio.charset.StandardCharsets;

/**
 * A message under a topic.
 *
 * @param qos MQTT's quality of service: 0 at most once, 1 at least once
 * @param retained whether the broker keeps it for whoever subscribes later
 */
public record Message(String topic, byte[] payload, int qos, boolean retained) {

  public static Message once(String topic, String text) {
    return new Message(topic, text.getBytes(StandardCharsets.UTF_8), 1, false);
  }

  public static Message kept(String topic, String text) {
    return new Message(topic, text.getBytes(StandardCharsets.UTF_8), 1, true);
  }

  public String text() {
    return new String(payload, StandardCharsets.UTF_8);
  }
}
