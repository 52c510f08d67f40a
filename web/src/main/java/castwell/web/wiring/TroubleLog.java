package castwell.web.wiring;

import castwell.analysis.wording.Phrase;
import castwell.capture.announce.Announcer;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.web.text.Speech;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Says once in the program's log what keeps shots from the disk or from their right date. */
final class TroubleLog implements Announcer.Listener {
  private static final Logger LOG = LoggerFactory.getLogger("trouble");

  private final Map<String, Optional<Phrase>> said = new HashMap<>();

  @Override
  public void fedMore() {}

  @Override
  public void linkChanged(LinkState state) {}

  @Override
  public void storeChanged(StoreState state) {
    Optional<Phrase> before = said.put(state.station(), state.trouble());
    if (!state.trouble().equals(before)) {
      LOG.warn(
          "{}: {}",
          state.station(),
          Speech.TRADE.say(state.trouble().orElse(Phrase.of("store.written"))));
    }
  }

  static void clock(Phrase sentence) {
    LOG.warn(Speech.TRADE.say(sentence));
  }

  /** Names what was never announced; it is lost unless the board still keeps it. */
  static void atTheEnd(StoreState state) {
    if (state.waiting() > 0) {
      LOG.error(
          "{}: {} could not be written before the end; the board says again what it still keeps. {}",
          state.station(),
          state.waiting() == 1 ? "1 shot" : state.waiting() + " shots",
          state.trouble().map(Speech.TRADE::say).orElse(""));
    }
  }
}
