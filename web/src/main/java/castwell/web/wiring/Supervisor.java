package castwell.web.wiring;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells the program that watches over the daemon that it serves, and then again and again that its
 * capture goes on, so that it is restarted should it hang. The protocol is sd_notify(3); where the
 * environment names no supervisor, nothing is sent.
 *
 * <p>Messages are sent by systemd's own program, since Java can't send datagrams over Unix sockets.
 */
final class Supervisor implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Supervisor.class);
  private static final int TIMES_A_PERIOD = 3;

  private final Optional<String> socket;
  private final ScheduledExecutorService timer =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "supervisor");
            thread.setDaemon(true);
            return thread;
          });

  private Supervisor(Optional<String> socket) {
    this.socket = socket;
  }

  /**
   * Says that all is ready, and from then on, for as long as the capture goes on, that it does.
   *
   * @param environment the process's: NOTIFY_SOCKET, and WATCHDOG_USEC where repeated messages are
   *     wanted
   * @param goesOn whether the capture goes on
   * @param environment of the process: NOTIFY_SOCKET, and WATCHDOG_USEC where it wants to hear
   *     again
   * @param goesOn whether the capture turns
   */
  static Supervisor of(Map<String, String> environment, BooleanSupplier goesOn) {
    Supervisor supervisor = new Supervisor(Optional.ofNullable(environment.get("NOTIFY_SOCKET")));
    supervisor.tell("READY=1");
    String period = environment.getOrDefault("WATCHDOG_USEC", "");
    if (period.matches("\\d{1,18}")) {
      long micros = Long.parseLong(period) / TIMES_A_PERIOD;
      supervisor.timer.scheduleAtFixedRate(
          () -> supervisor.tellIf(goesOn), 0, Math.max(1, micros), TimeUnit.MICROSECONDS);
    }
    return supervisor;
  }

  private void tellIf(BooleanSupplier goesOn) {
    if (goesOn.getAsBoolean()) {
      tell("WATCHDOG=1");
    }
  }

  private void tell(String what) {
    if (socket.isEmpty()) {
      return;
    }
    ProcessBuilder notify =
        new ProcessBuilder("systemd-notify", what)
            .redirectOutput(Redirect.DISCARD)
            .redirectError(Redirect.DISCARD);
    notify.environment().put("NOTIFY_SOCKET", socket.get());
    try {
      Process said = notify.start();
      if (said.waitFor() != 0) {
        LOG.warn("systemd-notify {} failed: the supervisor may end this program.", what);
      }
    } catch (IOException e) {
      LOG.warn("systemd-notify can't be started: the supervisor may end this program.");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    timer.shutdownNow();
    tell("STOPPING=1");
  }
}
