package castwell.capture.publish;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;

/** A poor network between us and a broker: slow, or cut. */
final class TcpLink implements AutoCloseable {
  private final ServerSocket server;
  private final int target;
  private final int bytesPerSecond;
  private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
  private volatile boolean open = true;

  /**
   * @param bytesPerSecond to the broker
   */
  TcpLink(Mosquitto broker, int bytesPerSecond) {
    this.target = broker.port();
    this.bytesPerSecond = bytesPerSecond;
    try {
      server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    run(this::accept);
  }

  URI url() {
    return URI.create("mqtt://127.0.0.1:" + server.getLocalPort());
  }

  /** Whether anything gets through; what is connected then breaks. */
  void open(boolean whether) {
    open = whether;
    if (!whether) {
      sockets.forEach(TcpLink::close);
    }
  }

  private void accept() throws IOException {
    while (!server.isClosed()) {
      Socket near = server.accept();
      sockets.add(near);
      try {
        Socket far = new Socket("127.0.0.1", target);
        sockets.add(far);
        run(() -> pump(near, far, bytesPerSecond));
        run(() -> pump(far, near, Integer.MAX_VALUE));
        if (!open) {
          open(false);
        }
      } catch (IOException e) {
        close(near);
      }
    }
  }

  private void pump(Socket from, Socket to, int atMost) throws IOException {
    byte[] buffer = new byte[Math.min(8192, Math.max(1, atMost / 20))];
    try (from;
        to) {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        LockSupport.parkNanos(1_000_000_000L * n / atMost);
        out.write(buffer, 0, n);
      }
    } finally {
      sockets.remove(from);
      sockets.remove(to);
    }
  }

  private interface Work {
    void run() throws IOException;
  }

  private static void run(Work work) {
    Thread thread =
        new Thread(
            () -> {
              try {
                work.run();
              } catch (IOException e) {
                // closed
              }
            },
            "tcp-link");
    thread.setDaemon(true);
    thread.start();
  }

  private static void close(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      // closed already
    }
  }

  @Override
  public void close() {
    open(false);
    try {
      server.close();
    } catch (IOException e) {
      // closed already
    }
  }
}
