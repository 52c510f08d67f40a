package castwell.capture.health;

import static java.nio.charset.StandardCharsets.US_ASCII;

import castwell.analysis.wording.Phrase;
import castwell.capture.device.Link;
import castwell.capture.device.Port;
import castwell.capture.device.PortUnavailable;
import castwell.capture.station.FaultCounts;
import castwell.capture.station.LinkState;
import castwell.capture.station.LinkState.State;
import castwell.capture.store.HeardBeat;
import castwell.capture.wire.Faults;
import castwell.capture.wire.Sentence;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.WireReader;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/** Where nothing captures, each station's port is opened and listened to for a moment. */
public final class PortTrial implements Witness {
  private static final byte[] WHO_ARE_YOU = "?\n".getBytes(US_ASCII);

  /** Two beats tell an interval, and a board that starts anew when opened takes some seconds. */
  private static final long PATIENCE_MICROS = Duration.ofSeconds(5).toNanos() / 1_000;

  private static final int ENOUGH_BEATS = 3;

  private final Clock clock;
  private final LongSupplier micros;
  private final Map<String, Heard> heard = new HashMap<>();

  private static final class Heard {
    private final List<HeardBeat> beats = new ArrayList<>();
    private final Faults faults = new Faults();
    private Optional<LinkState> link = Optional.empty();
    private Optional<String> device = Optional.empty();
    private Duration over = Duration.ZERO;
  }

  /**
   * @param micros the host's monotonic clock
   */
  public PortTrial(Clock clock, LongSupplier micros) {
    this.clock = clock;
    this.micros = micros;
  }

  /** Listens, for five seconds at most. */
  public void listen(String station, Port port) {
    Heard what = new Heard();
    heard.put(station, what);
    Instant opened = clock.instant();
    try (Link link = port.open()) {
      hear(link, what);
      boolean beats = !what.beats.isEmpty();
      what.link =
          Optional.of(
              state(
                  station,
                  port.name(),
                  beats ? State.ONLINE : State.OFFLINE,
                  Phrase.of(beats ? "link.beats" : "link.silent"),
                  what,
                  opened));
    } catch (PortUnavailable e) {
      what.link =
          Optional.of(
              state(station, port.name(), State.SEARCHING, e.phrase(), what, clock.instant()));
    }
  }

  private static LinkState state(
      String station, String port, State state, Phrase sentence, Heard what, Instant since) {
    return new LinkState(station, port, state, sentence, what.device, Optional.empty(), since);
  }

  private void hear(Link link, Heard what) {
    WireReader wire = new WireReader(what.faults);
    byte[] buffer = new byte[4096];
    long from = micros.getAsLong();
    long now = from;
    try {
      link.write(WHO_ARE_YOU);
      int count = 0;
      while (count >= 0
          && now - from < PATIENCE_MICROS
          && (what.beats.size() < ENOUGH_BEATS || what.device.isEmpty())) {
        count = link.read(buffer);
        if (count > 0) {
          wire.accept(Arrays.copyOf(buffer, count)).forEach(sentence -> take(sentence, what));
        }
        now = micros.getAsLong();
      }
    } catch (IOException gone) {
      // What was heard until then is told.
    }
    what.over = Duration.ofNanos((now - from) * 1_000);
  }

  private void take(Sentence sentence, Heard what) {
    if (sentence instanceof Heartbeat beat) {
      what.beats.add(new HeardBeat(clock.instant(), beat));
    } else if (sentence instanceof Identity identity) {
      what.device = Optional.of(identity.device());
    }
  }

  @Override
  public Optional<LinkState> link(String station) {
    return heard.get(station).link;
  }

  @Override
  public List<HeardBeat> beats(String station) {
    return heard.get(station).beats;
  }

  @Override
  public Optional<FaultCounts> faults(String station) {
    Heard what = heard.get(station);
    return Optional.of(new FaultCounts(what.faults.all(), what.faults.all(), what.over));
  }
}
