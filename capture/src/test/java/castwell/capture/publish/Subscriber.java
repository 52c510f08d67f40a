package castwell.capture.publish;

import static java.nio.charset.StandardCharsets.UTF_8;

import castwell.capture.publish.broker.Message;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * Whoever listens to a broker: mosquitto's own client, in a process of its own. The broker keeps
 * for it what is said while it is away.
 */
public final class Subscriber implements AutoCloseable {
  private final Process process;
  private final List<Message> heard = new ArrayList<>();

  /**
   * @param filter of topics
   */
  public static Subscriber to(Mosquitto broker, String filter) {
    return to(broker, filter, "subscriber");
  }

  /**
   * @param id by which the broker knows it again
   */
  public static Subscriber to(Mosquitto broker, String filter, String id) {
    try {
      return new Subscriber(broker, filter, id);
    } catch (IOException e) {
      throw new UncheckedIOException("mosquitto_sub is missing: run .ci/setup", e);
    }
  }

  private Subscriber(Mosquitto broker, String filter, String id) throws IOException {
    process =
        new ProcessBuilder(
                "mosquitto_sub",
                "-V",
                "5",
                "-h",
                "127.0.0.1",
                "-p",
                "" + broker.port(),
                "-q",
                "1",
                "-c",
                "-x",
                "3600",
                "-i",
                id,
                "-F",
                "%r %q %t %p",
                "-t",
                filter)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    Thread reader = new Thread(this::read, "subscriber");
    reader.setDaemon(true);
    reader.start();
  }

  private void read() {
    try (BufferedReader lines = process.inputReader(UTF_8)) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        String[] parts = line.split(" ", 4);
        Message message =
            new Message(
                parts[2],
                parts[3].getBytes(UTF_8),
                Integer.parseInt(parts[1]),
                parts[0].equals("1"));
        synchronized (heard) {
          heard.add(message);
        }
      }
    } catch (IOException e) {
      // ended
    }
  }

  /** All so far, repeats included. */
  public List<Message> heard() {
    synchronized (heard) {
      return List.copyOf(heard);
    }
  }

  public List<String> texts(String topic) {
    return heard().stream()
        .filter(message -> message.topic().equals(topic))
        .map(Message::text)
        .toList();
  }

  public boolean hasHeard(Predicate<Message> wanted) {
    return heard().stream().anyMatch(wanted);
  }

  @Override
  public void close() {
    process.destroyForcibly();
    process.onExit().join();
  }
}
