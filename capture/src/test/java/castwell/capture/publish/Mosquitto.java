package castwell.capture.publish;

import castwell.capture.Until;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The real broker, in a process of its own, at a port of its own. */
public final class Mosquitto implements AutoCloseable {

  private final Path folder;
  private final int port;
  private Process process;

  private Mosquitto(Path folder, int port) {
    this.folder = folder;
    this.port = port;
  }

  /**
   * @param folder of its own, for its settings and what it keeps
   * @param settings further lines of its settings
   */
  public static Mosquitto start(Path folder, String... settings) {
    try {
      Mosquitto broker = new Mosquitto(Files.createDirectories(folder), freePort());
      broker.configure(settings.length == 0 ? new String[] {"allow_anonymous true"} : settings);
      broker.start();
      return broker;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  private void configure(String... settings) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("listener " + port + " 127.0.0.1");
    lines.add("persistence true");
    lines.add("persistence_location " + folder + "/");
    lines.add("max_queued_messages 0");
    lines.add("user root"); // its usual user may not read a test's folder
    lines.addAll(List.of(settings));
    Files.write(folder.resolve("mosquitto.conf"), lines);
  }

  /** Starts it, and returns when it listens. */
  public void start() {
    try {
      process =
          new ProcessBuilder(
                  "/usr/sbin/mosquitto", "-c", folder.resolve("mosquitto.conf").toString())
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("mosquitto.log").toFile())
              .start();
    } catch (IOException e) {
      throw new UncheckedIOException("mosquitto is missing: run .ci/setup", e);
    }
    long began = System.nanoTime();
    while (!listens()) {
      if (!process.isAlive() || System.nanoTime() - began > Until.PATIENCE.toNanos()) {
        throw new AssertionError("mosquitto doesn't listen: " + log());
      }
      Thread.onSpinWait();
    }
  }

  private boolean listens() {
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress("127.0.0.1", port), 200);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  public String log() {
    try {
      return Files.readString(folder.resolve("mosquitto.log"));
    } catch (IOException e) {
      return "no log: " + e;
    }
  }

  public int port() {
    return port;
  }

  public URI url() {
    return URI.create("mqtt://127.0.0.1:" + port);
  }

  /** Something is said to it, by its own client. */
  public void say(String topic, String text) {
    try {
      Process process =
          new ProcessBuilder(
                  "mosquitto_pub", "-p", String.valueOf(port), "-q", "1", "-t", topic, "-m", text)
              .inheritIO()
              .start();
      if (process.waitFor() != 0) {
        throw new AssertionError("mosquitto_pub failed");
      }
    } catch (IOException e) {
      throw new UncheckedIOException("mosquitto_pub is missing: run .ci/setup", e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** It hangs, its connections with it. */
  public void freeze() {
    signal("STOP");
  }

  public void thaw() {
    signal("CONT");
  }

  /** As a supervisor ends it: what it keeps is saved. */
  public void stop() {
    process.destroy();
    awaitEnd();
  }

  public void kill() {
    process.destroyForcibly();
    awaitEnd();
  }

  private void signal(String name) {
    try {
      new ProcessBuilder("kill", "-" + name, String.valueOf(process.pid())).start().waitFor();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private void awaitEnd() {
    try {
      if (!process.waitFor(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
        throw new AssertionError("mosquitto doesn't end");
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
    awaitEnd();
  }
}
