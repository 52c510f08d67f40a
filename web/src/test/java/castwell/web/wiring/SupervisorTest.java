package castwell.web.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a supervisor hears through systemd's own program. Source of the words: sd_notify(3) and
 * systemd.service(5), WatchdogSec.
 */
@Tag("system")
class SupervisorTest {
  private static final String LISTENER =
      """
      use Socket; use IO::Handle;
      socket(my $socket, PF_UNIX, SOCK_DGRAM, 0); bind($socket, sockaddr_un($ARGV[0])) or die $!;
      open(my $heard, ">>", $ARGV[1]); $heard->autoflush;
      while (defined recv($socket, my $said, 4096, 0)) { print $heard "$said\\n" }""";

  @TempDir Path folder;

  private Path socket;
  private Path heard;
  private Process listener;

  @BeforeEach
  void listen() throws IOException {
    socket = folder.resolve("notify");
    heard = folder.resolve("heard");
    listener =
        new ProcessBuilder("perl", "-e", LISTENER, socket.toString(), heard.toString())
            .inheritIO()
            .start();
    Until.holds("a listener", () -> Files.exists(socket) && Files.exists(heard));
  }

  @AfterEach
  void hangUp() {
    listener.destroy();
  }

  @Test
  void whoTurnsSaysSoEverAgainAndWhoHangsNoMore() {
    AtomicBoolean turns = new AtomicBoolean(true);
    Map<String, String> asked =
        Map.of("NOTIFY_SOCKET", socket.toString(), "WATCHDOG_USEC", "30000");
    try (Supervisor supervisor = Supervisor.of(asked, () -> asks(turns))) {
      assertThat(supervisor).isNotNull();
      Until.holds("two signs of life", () -> signs() >= 2);
      assertThat(heard().get(0)).isEqualTo("READY=1");
      turns.set(false);
      askedInVain = 0;
      Until.holds("it hangs", () -> askedInVain >= 5);
      long before = signs();
      Until.holds("it hangs on", () -> askedInVain >= 15);
      assertThat(signs()).isEqualTo(before);
    }
    Until.holds("a farewell", () -> heard().contains("STOPPING=1"));
  }

  @Test
  void nobodyIsToldWhereNobodyAsksTo() {
    try (Supervisor supervisor = Supervisor.of(Map.of(), () -> true)) {
      assertThat(supervisor).isNotNull();
    }
    assertThat(heard()).isEmpty();
  }

  private volatile int askedInVain;

  private boolean asks(AtomicBoolean turns) {
    if (!turns.get()) {
      askedInVain++;
    }
    return turns.get();
  }

  private long signs() {
    return heard().stream().filter("WATCHDOG=1"::equals).count();
  }

  private List<String> heard() {
    try {
      return Files.readAllLines(heard);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
