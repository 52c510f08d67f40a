package castwell.capture.publish.broker;

import java.util.HashMap;
import java.util.Map;

/** What the broker retains for us under each topic, as far as this connection has told it. */
public final class Kept {
  private final BrokerConnection connection;
  private final Map<String, String> told = new HashMap<>();

  public Kept(BrokerConnection connection) {
    this.connection = connection;
  }

  /** Returns when the broker retains this text; it sends nothing if the broker has it already. */
  public void keep(String topic, String text) throws BrokerUnavailable {
    if (!text.equals(told.get(topic))) {
      connection.send(Message.kept(topic, text)).await();
      told.put(topic, text);
    }
  }
}
