package castwell.web;

import castwell.capture.Until;
import castwell.capture.device.PseudoTerminal;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.ConnectException;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * A pretended satellite receiver behind Debian's gpsd, which does what a range's daemon does too.
 */
final class SatelliteReceiver implements AutoCloseable {
  private static final int FIXES_TO_LEARN = 30;

  private final PseudoTerminal line = new PseudoTerminal();
  private final Process daemon;
  private final Socket socket;
  private final BufferedReader reports;
  private int second;

  private SatelliteReceiver() throws IOException {
    int port = freePort();
    daemon =
        new ProcessBuilder(
                "/usr/sbin/gpsd", "-N", "-n", "-S", String.valueOf(port), line.port().toString())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    socket = connected(port);
    reports =
        new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
    socket
        .getOutputStream()
        .write("?WATCH={\"enable\":true,\"json\":true};\n".getBytes(StandardCharsets.US_ASCII));
  }

  /** Ready once it has learnt what a receiver's cycle is like. */
  static SatelliteReceiver start() throws IOException {
    SatelliteReceiver receiver = new SatelliteReceiver();
    receiver.socket.setSoTimeout(300);
    for (int i = 0; i < FIXES_TO_LEARN; i++) {
      receiver.say();
      try {
        receiver.hear();
      } catch (java.net.SocketTimeoutException e) {
        // not yet
      }
    }
    receiver.socket.setSoTimeout((int) Until.PATIENCE.toMillis());
    return receiver;
  }

  private static int freePort() throws IOException {
    try (ServerSocket any = new ServerSocket(0)) {
      return any.getLocalPort();
    }
  }

  private static Socket connected(int port) {
    Socket[] found = new Socket[1];
    Until.holds(
        "gpsd",
        () -> {
          try {
            found[0] = new Socket("127.0.0.1", port);
            return true;
          } catch (ConnectException e) {
            return false;
          } catch (IOException e) {
            throw new IllegalStateException(e);
          }
        });
    return found[0];
  }

  /** How many milliseconds from a sentence on the line to the report at a reader. */
  double fixMs() throws IOException {
    say();
    long written = System.nanoTime();
    hear();
    return (System.nanoTime() - written) / 1e6;
  }

  private void hear() throws IOException {
    while (!reports.readLine().contains("\"TPV\"")) {}
  }

  /** A position a second later (NMEA 0183's RMC, which tells a whole fix). */
  private void say() {
    second++;
    String body =
        "GPRMC,%02d%02d%02d.00,A,4807.038,N,01131.000,E,0.0,84.4,271126,,"
            .formatted(second / 3600 % 24, second / 60 % 60, second % 60);
    int sum = body.chars().reduce(0, (a, b) -> a ^ b);
    String sentence = String.format(Locale.ROOT, "$%s*%02X\r%n", body, sum);
    line.write(sentence.getBytes(StandardCharsets.US_ASCII));
  }

  @Override
  public void close() throws IOException {
    socket.close();
    daemon.destroy();
    line.close();
  }
}
