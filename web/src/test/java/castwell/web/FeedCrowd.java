package castwell.web;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Many readers of the live feed, from many addresses, on one thread. */
final class FeedCrowd implements AutoCloseable {
  private static final int OF_ONE_ADDRESS = 50;

  private final int port;
  private final Selector selector;
  private final Thread thread = new Thread(this::read, "crowd");
  private final List<SocketChannel> all = new ArrayList<>();
  private final Map<Long, Heard> heard = new ConcurrentHashMap<>();
  private volatile int answered;
  private volatile boolean open = true;

  /** How many heard an event, and when the last of them did. */
  record Heard(int by, long lastNanos) {
    Heard also(Heard other) {
      return new Heard(by + other.by, Math.max(lastNanos, other.lastNanos));
    }
  }

  /** What is left of a line that hasn't ended yet. */
  private static final class Line {
    private final StringBuilder text = new StringBuilder();
    private boolean first = true;
  }

  FeedCrowd(int port) throws IOException {
    this.port = port;
    this.selector = Selector.open();
    thread.start();
  }

  /** Readers that take everything at once. */
  void join(int readers, long after) throws IOException {
    for (int i = 0; i < readers; i++) {
      SocketChannel channel = ask(after);
      channel.configureBlocking(false);
      channel.register(selector.wakeup(), SelectionKey.OP_READ, new Line());
    }
  }

  /** Readers that never take anything, and have as little room as may be. */
  void joinAndNeverRead(int readers, long after) throws IOException {
    for (int i = 0; i < readers; i++) {
      ask(after);
    }
  }

  private SocketChannel ask(long after) throws IOException {
    SocketChannel channel = SocketChannel.open();
    channel.setOption(StandardSocketOptions.SO_RCVBUF, 8 * 1024);
    channel.bind(new InetSocketAddress("127.0.1." + (1 + all.size() / OF_ONE_ADDRESS), 0));
    channel.connect(new InetSocketAddress("127.0.0.1", port));
    String request = "GET /api/live?after=" + after + " HTTP/1.0\r\nHost: localhost\r\n\r\n";
    channel.write(ByteBuffer.wrap(request.getBytes(StandardCharsets.US_ASCII)));
    all.add(channel);
    return channel;
  }

  /** How many were answered that it is a feed. */
  int answered() {
    return answered;
  }

  /** Nobody yet where nobody is named. */
  Heard heard(long event) {
    return heard.getOrDefault(event, new Heard(0, 0));
  }

  private void read() {
    ByteBuffer some = ByteBuffer.allocate(64 * 1024);
    try {
      while (open) {
        selector.select();
        for (SelectionKey key : selector.selectedKeys()) {
          some.clear();
          if (((SocketChannel) key.channel()).read(some) < 0) {
            key.cancel();
          }
          take((Line) key.attachment(), some.flip());
        }
        selector.selectedKeys().clear();
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private void take(Line line, ByteBuffer bytes) {
    while (bytes.hasRemaining()) {
      char c = (char) (bytes.get() & 0xFF);
      if (c != '\n') {
        line.text.append(c);
      } else {
        String text = line.text.toString();
        if (line.first && text.contains(" 200")) {
          answered++; // by this thread alone
        } else if (text.startsWith("id: ")) {
          long event = Long.parseLong(text.substring(4));
          heard.merge(event, new Heard(1, System.nanoTime()), Heard::also);
        }
        line.first = false;
        line.text.setLength(0);
      }
    }
  }

  @Override
  public void close() throws IOException {
    open = false;
    selector.close();
    for (SocketChannel channel : all) {
      channel.close();
    }
  }
}
