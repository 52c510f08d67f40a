package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.clock.ClockStep;
import castwell.capture.daemon.Capture;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.station.FaultCounts;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * A witness that asks the capture that runs in this program.
 *
 * @param broker how each station stands with the broker; nothing when none is configured
 * @param clockSentence what is amiss with this computer's clock
 */
public record RunningCapture(
    Capture capture, Supplier<List<BrokerState>> broker, Supplier<Optional<Phrase>> clockSentence)
    implements Witness {

  @Override
  public Optional<LinkState> link(String station) {
    return capture.links().stream().filter(link -> link.station().equals(station)).findFirst();
  }

  @Override
  public List<HeardBeat> beats(String station) {
    return capture.recentBeats(station);
  }

  @Override
  public Optional<FaultCounts> faults(String station) {
    return Optional.of(capture.recentFaults(station));
  }

  @Override
  public Optional<StoreState> store(String station) {
    return capture.stores().stream().filter(store -> store.station().equals(station)).findFirst();
  }

  @Override
  public Optional<BrokerState> broker(String station) {
    return broker.get().stream().filter(state -> state.station().equals(station)).findFirst();
  }

  @Override
  public Optional<Phrase> clockTrouble() {
    return clockSentence.get();
  }

  @Override
  public Optional<ClockStep> clockStep() {
    return capture.clockStep();
  }
}
