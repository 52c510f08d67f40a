package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.clock.ClockStep;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.station.FaultCounts;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import java.util.List;
import java.util.Optional;

/** Whoever knows how a station is now. Anything that a witness doesn't know is empty. */
public interface Witness {

  default Optional<LinkState> link(String station) {
    return Optional.empty();
  }

  /** The heartbeats of the last minutes, ascending. */
  List<HeardBeat> beats(String station);

  default Optional<FaultCounts> faults(String station) {
    return Optional.empty();
  }

  default Optional<StoreState> store(String station) {
    return Optional.empty();
  }

  /** The station's state with the broker, if there is one. */
  default Optional<BrokerState> broker(String station) {
    return Optional.empty();
  }

  /** What is wrong with this computer's clock now, in one sentence. */
  default Optional<Phrase> clockTrouble() {
    return Optional.empty();
  }

  /** The last time that this computer's clock jumped. */
  default Optional<ClockStep> clockStep() {
    return Optional.empty();
  }
}
