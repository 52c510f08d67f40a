package castwell.capture.publish;

import castwell.capture.device.Link;
import castwell.capture.publish.broker.Broker;
import castwell.capture.publish.broker.BrokerConnection;
import castwell.capture.publish.broker.BrokerUnavailable;
import castwell.capture.publish.broker.Message;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * A board's wire as a topic on which both ends speak. Messages are sent at most once (quality of
 * service 0): the host notices a lost line by its number and asks the board for its edges again,
 * and a repeated line helps nobody.
 */
final class WireLink implements Link {
  private static final int AT_MOST_ONCE = 0;
  private static final long LONGEST_WAIT_MILLIS = 500;

  /**
   * When more messages than this wait for the reader, lines are lost, as in a full serial buffer.
   */
  private static final int MOST_WAITING = 1024;

  private static final int LONGEST_MESSAGE = 8192;
  private static final byte[] NOTHING = {};

  private final String topic;
  private final BlockingQueue<byte[]> heard = new ArrayBlockingQueue<>(MOST_WAITING);
  private final BrokerConnection connection;
  private byte[] left = NOTHING;
  private volatile boolean gone;
  private final AtomicBoolean closed = new AtomicBoolean();

  private WireLink(Broker broker, String clientId, String topic) throws BrokerUnavailable {
    this.topic = topic;
    this.connection =
        BrokerConnection.open(broker, clientId, Optional.empty(), this::hear, this::lost);
  }

  static WireLink open(Broker broker, String clientId, String topic) throws BrokerUnavailable {
    WireLink link = new WireLink(broker, clientId, topic);
    try {
      link.connection.subscribe(topic, true);
      return link;
    } catch (BrokerUnavailable e) {
      link.close();
      throw e;
    }
  }

  /** The connection calls this, so it never waits. */
  private void hear(Message message) {
    if (message.payload().length <= LONGEST_MESSAGE) {
      heard.offer(message.payload());
    }
  }

  private void lost() {
    gone = true;
    heard.offer(NOTHING); // Wakes a reader, who needn't wait any longer.
  }

  @Override
  public int read(byte[] buffer) {
    if (left.length == 0) {
      left = next();
    }
    if (left.length == 0) {
      return gone ? -1 : 0;
    }
    int count = Math.min(left.length, buffer.length);
    System.arraycopy(left, 0, buffer, 0, count);
    left = Arrays.copyOfRange(left, count, left.length);
    return count;
  }

  private byte[] next() {
    try {
      byte[] next = gone ? heard.poll() : heard.poll(LONGEST_WAIT_MILLIS, TimeUnit.MILLISECONDS);
      return next == null ? NOTHING : next;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      gone = true;
      return NOTHING;
    }
  }

  /** Sends without waiting for the broker. */
  @Override
  public void write(byte[] bytes) throws IOException {
    try {
      connection.send(new Message(topic, bytes, AT_MOST_ONCE, false));
    } catch (BrokerUnavailable e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  @Override
  public void close() {
    lost();
    if (closed.compareAndSet(false, true)) {
      connection.abandon(); // There is no will that the broker would have to announce.
    }
  }
}
