package castwell.capture.publish.broker;

import castwell.analysis.wording.Phrase;
import java.io.EOFException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.paho.mqttv5.client.IMqttToken;
import org.eclipse.paho.mqttv5.client.MqttAsyncClient;
import org.eclipse.paho.mqttv5.client.MqttCallback;
import org.eclipse.paho.mqttv5.client.MqttClientException;
import org.eclipse.paho.mqttv5.client.MqttConnectionOptions;
import org.eclipse.paho.mqttv5.client.MqttDisconnectResponse;
import org.eclipse.paho.mqttv5.client.persist.MemoryPersistence;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.MqttSubscription;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;

/**
 * One connection to a broker (MQTT 5), until it breaks. It stores nothing and never reconnects,
 * since the library's own ways of doing so lose messages: whoever needs another connection opens
 * one.
 */
public final class BrokerConnection implements AutoCloseable {
  private static final int KEEP_ALIVE_SECONDS = 10;
  private static final int MOST_IN_FLIGHT = 100;

  /** Reason codes from here on are failures (MQTT 5.0, 2.4). */
  private static final int REFUSED = 0x80;

  /** A value of retain handling: send no retained messages (MQTT 5.0, 3.8.3.1). */
  private static final int NOTHING_KEPT = 2;

  /**
   * The library would print every broken connection with a stack trace; here a sentence says it.
   */
  private static final Logger LIBRARY = Logger.getLogger("org.eclipse.paho.mqttv5");

  static {
    LIBRARY.setLevel(Level.OFF);
  }

  private final MqttAsyncClient client;
  private final Broker broker;
  private final Heard heard;
  private final AtomicBoolean left = new AtomicBoolean();

  /** A message that was sent. */
  public final class Sent {
    private final String topic;
    private final IMqttToken token;

    private Sent(String topic, IMqttToken token) {
      this.topic = topic;
      this.token = token;
    }

    /** Returns once the broker has acknowledged it. */
    public void await() throws BrokerUnavailable {
      try {
        token.waitForCompletion(broker.patience().toMillis());
        // The library doesn't take the broker's refusal for a failure.
        refuse(token, "broker.forbids_writing", topic);
      } catch (MqttException e) {
        throw unavailable(broker, e);
      }
    }
  }

  private BrokerConnection(MqttAsyncClient client, Broker broker, Heard heard) {
    this.client = client;
    this.broker = broker;
    this.heard = heard;
  }

  /**
   * Connects to a broker.
   *
   * @param clientId unlike that of every other client of the broker
   * @param will the message that the broker sends when this client vanishes
   * @param listener gets what was subscribed to, on a thread of the connection; it must not send
   *     and wait
   * @param lost called once when the connection breaks
   */
  public static BrokerConnection open(
      Broker broker,
      String clientId,
      Optional<Message> will,
      Consumer<Message> listener,
      Runnable lost)
      throws BrokerUnavailable {
    Heard heard = new Heard(listener, lost);
    MqttConnectionOptions options = options(broker);
    will.ifPresent(message -> options.setWill(message.topic(), packet(message)));
    try {
      MqttAsyncClient client =
          new MqttAsyncClient(broker.serverUri(), clientId, new MemoryPersistence());
      client.setCallback(heard);
      heard.room.release(connect(client, options, broker));
      return new BrokerConnection(client, broker, heard);
    } catch (MqttException e) {
      throw unavailable(broker, e);
    }
  }

  /** Returns how many messages it may have in flight. */
  private static int connect(MqttAsyncClient client, MqttConnectionOptions options, Broker broker)
      throws MqttException {
    try {
      IMqttToken connected = client.connect(options);
      // The library leaves a thread behind unless it gives up by itself first, so this waits a
      // little longer.
      connected.waitForCompletion(broker.patience().plusSeconds(1).toMillis());
      int allowed =
          Optional.ofNullable(connected.getResponseProperties())
              .map(MqttProperties::getReceiveMaximum)
              .orElse(MOST_IN_FLIGHT);
      return Math.min(allowed, MOST_IN_FLIGHT);
    } catch (MqttException e) {
      abandon(client);
      throw e;
    }
  }

  private static MqttConnectionOptions options(Broker broker) throws BrokerUnavailable {
    MqttConnectionOptions options = new MqttConnectionOptions();
    options.setCleanStart(true);
    options.setAutomaticReconnect(false);
    options.setConnectionTimeout((int) Math.max(1, broker.patience().toSeconds()));
    options.setKeepAliveInterval(KEEP_ALIVE_SECONDS);
    options.setReceiveMaximum(MOST_IN_FLIGHT);
    options.setTopicAliasMaximum(0);
    broker
        .credentials()
        .ifPresent(
            known -> {
              options.setUserName(known.user());
              options.setPassword(known.password().getBytes(StandardCharsets.UTF_8));
            });
    if (broker.isEncrypted()) {
      options.setSocketFactory(BrokerTls.sockets(broker));
    }
    return options;
  }

  /**
   * Subscribes to messages that are sent from now on, without those that were retained before.
   *
   * @param noLocal whether messages of this connection itself are left out
   */
  public void subscribe(String filter, boolean noLocal) throws BrokerUnavailable {
    MqttSubscription subscription = new MqttSubscription(filter, 1);
    subscription.setNoLocal(noLocal);
    subscription.setRetainHandling(NOTHING_KEPT);
    try {
      IMqttToken token = client.subscribe(subscription);
      token.waitForCompletion(broker.patience().toMillis());
      refuse(token, "broker.forbids_reading", filter);
    } catch (MqttException e) {
      throw unavailable(broker, e);
    }
  }

  /** Sends a message, after waiting while as many are in flight as the broker takes. */
  public Sent send(Message message) throws BrokerUnavailable {
    try {
      if (!heard.room.tryAcquire(broker.patience().toMillis(), TimeUnit.MILLISECONDS)) {
        throw new MqttException(MqttClientException.REASON_CODE_CLIENT_TIMEOUT);
      }
      return new Sent(message.topic(), client.publish(message.topic(), packet(message)));
    } catch (MqttException e) {
      throw unavailable(broker, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new BrokerUnavailable(Phrase.of("broker.left", broker.url()), e);
    }
  }

  private void refuse(IMqttToken token, String key, String topic) throws BrokerUnavailable {
    int[] reasons = Optional.ofNullable(token.getReasonCodes()).orElse(new int[0]);
    if (reasons.length > 0 && reasons[0] >= REFUSED) {
      throw new BrokerUnavailable(
          Phrase.of(key, broker.url(), topic, "0x%02X".formatted(reasons[0])));
    }
  }

  public boolean isOpen() {
    return client.isConnected();
  }

  /** Why the connection isn't open any more. Brokers seldom say. */
  public BrokerUnavailable whyLost() {
    return new BrokerUnavailable(Phrase.of("broker.lost", broker.url()));
  }

  /** Disconnects, so that the broker doesn't send the will. */
  @Override
  public void close() {
    if (leave()) {
      try {
        client.disconnect().waitForCompletion(broker.patience().toMillis());
      } catch (MqttException e) {
        // The connection is broken already, or as good as.
      }
      abandon(client);
    }
  }

  /** Breaks the connection off, unless it was closed. */
  public void abandon() {
    if (leave()) {
      abandon(client);
    }
  }

  /** Whether this call is the first to leave: the library can be left only once. */
  private boolean leave() {
    heard.fallSilent();
    return left.compareAndSet(false, true);
  }

  /**
   * Leaves the client without the library's own close, which would take away what some of its
   * threads still use while they end.
   */
  private static void abandon(MqttAsyncClient client) {
    try {
      client.disconnectForcibly(0, 1, false);
    } catch (MqttException e) {
      // It isn't connected.
    }
  }

  private static MqttMessage packet(Message message) {
    MqttMessage packet = new MqttMessage(message.payload());
    packet.setQos(message.qos());
    packet.setRetained(message.retained());
    return packet;
  }

  private static BrokerUnavailable unavailable(Broker broker, MqttException e) {
    Throwable root = e;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    Phrase why =
        switch (e.getReasonCode()) {
          case 0x86, 0x87, 4, 5 -> Phrase.of("broker.refused");
          case MqttClientException.REASON_CODE_CLIENT_TIMEOUT -> Phrase.of("broker.no_answer");
          default ->
              root instanceof EOFException
                  ? Phrase.of("broker.hung_up")
                  : Phrase.asIs(
                      Optional.ofNullable(root.getMessage())
                          .orElseGet(root.getClass()::getSimpleName));
        };
    return new BrokerUnavailable(Phrase.of("broker.unavailable", broker.url(), why), e);
  }

  /** Takes in what the connection hears. */
  private static final class Heard implements MqttCallback {
    private final Consumer<Message> listener;
    private final Runnable lost;
    private final AtomicBoolean silent = new AtomicBoolean();

    /**
     * Permits for messages in flight. The library counts these too, but announces that one has
     * arrived before it has counted it, and then refuses the next.
     */
    private final Semaphore room = new Semaphore(0);

    Heard(Consumer<Message> listener, Runnable lost) {
      this.listener = listener;
      this.lost = lost;
    }

    void fallSilent() {
      silent.set(true);
    }

    @Override
    public void messageArrived(String topic, MqttMessage packet) {
      listener.accept(
          new Message(topic, packet.getPayload(), packet.getQos(), packet.isRetained()));
    }

    @Override
    public void disconnected(MqttDisconnectResponse response) {
      if (silent.compareAndSet(false, true)) {
        lost.run();
      }
    }

    @Override
    public void mqttErrorOccurred(MqttException e) {}

    @Override
    public void deliveryComplete(IMqttToken token) {
      room.release();
    }

    @Override
    public void connectComplete(boolean reconnect, String serverUri) {}

    @Override
    public void authPacketArrived(int reasonCode, MqttProperties properties) {}
  }
}
