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

/** A witness where no capture runs: it opens each station's port and listens for a moment. */
public final class PortTrial implements Witness {
  private static final byte[] WHO_ARE_YOU = "?\n".getBytes(US_ASCII);

  /**
   * Two beats are needed for an interval, and a board that restarts when its port is opened takes
   * some seconds.
   */
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
   * @param micros the host's monotonic clock, in microseconds
   */
  public PortTrial(Clock clock, LongSupplier micros) {
    this.clock = clock;
    this.micros = micros;
  }

  /** Listens to a port, for five seconds at most. */
  public void listen(String station, Port port) {
    Heard found = new Heard();
    heard.put(station, found);
    Instant opened = clock.instant();
    try (Link link = port.open()) {
      hear(link, found);
      boolean beats = !found.beats.isEmpty();
      found.link =
          Optional.of(
              state(
                  station,
                  port.name(),
                  beats ? State.ONLINE : State.OFFLINE,
                  Phrase.of(beats ? "link.beats" : "link.silent"),
                  found,
                  opened));
    } catch (PortUnavailable e) {
      found.link =
          Optional.of(
              state(station, port.name(), State.SEARCHING, e.phrase(), found, clock.instant()));
    }
  }

  private static LinkState state(
      String station, String port, State state, Phrase sentence, Heard found, Instant since) {
    return new LinkState(station, port, state, sentence, found.device, Optional.empty(), since);
  }

  private void hear(Link link, Heard found) {
    WireReader wire = new WireReader(found.faults);
    byte[] buffer = new byte[4096];
    long from = micros.getAsLong();
    long now = from;
    try {
      link.write(WHO_ARE_YOU);
      int count = 0;
      while (count >= 0
          && now - from < PATIENCE_MICROS
          && (found.beats.size() < ENOUGH_BEATS || found.device.isEmpty())) {
        count = link.read(buffer);
        if (count > 0) {
          wire.accept(Arrays.copyOf(buffer, count)).forEach(sentence -> take(sentence, found));
        }
        now = micros.getAsLong();
      }
    } catch (IOException gone) {
      // What was heard until then counts.
    }
    found.over = Duration.ofNanos((now - from) * 1_000);
  }

  private void take(Sentence sentence, Heard found) {
    if (sentence instanceof Heartbeat beat) {
      found.beats.add(new HeardBeat(clock.instant(), beat));
    } else if (sentence instanceof Identity identity) {
      found.device = Optional.of(identity.device());
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
    Heard found = heard.get(station);
    return Optional.of(new FaultCounts(found.faults.all(), found.faults.all(), found.over));
  }
}
