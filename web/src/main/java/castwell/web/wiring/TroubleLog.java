package castwell.web.wiring;

import castwell.capture.daemon.Announcer;
import castwell.capture.daemon.LinkState;
import castwell.capture.daemon.StoreState;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Says in the program's log, once, what keeps shots from the disk or from their right date. */
final class TroubleLog implements Announcer.Listener {
  private static final Logger LOG = LoggerFactory.getLogger("trouble");

  private final Map<String, Optional<String>> said = new HashMap<>();

  @Override
  public void fedMore() {}

  @Override
  public void linkChanged(LinkState state) {}

  @Override
  public void storeChanged(StoreState state) {
    Optional<String> before = said.put(state.station(), state.trouble());
    if (!state.trouble().equals(before)) {
      LOG.warn(
          "{}: {}",
          state.station(),
          state.trouble().orElse("What waited is on the disk; nothing waits any more."));
    }
  }

  static void clock(String sentence) {
    LOG.warn(sentence);
  }

  /** What was never announced, and is lost unless the board still keeps it. */
  static void atTheEnd(StoreState state) {
    if (state.waiting() > 0) {
      LOG.error(
          "{}: {} could not be written before the end; the board says again what it still keeps. {}",
          state.station(),
          state.waiting() == 1 ? "1 shot" : state.waiting() + " shots",
          state.trouble().orElse(""));
    }
  }
}
