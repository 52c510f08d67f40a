package castwell.capture.health;

import castwell.capture.daemon.ClockStep;
import castwell.capture.daemon.FaultCounts;
import castwell.capture.daemon.LinkState;
import castwell.capture.daemon.StoreState;
import castwell.capture.store.HeardBeat;
import java.util.List;
import java.util.Optional;

/** Who knows how a station is now, as far as they do. */
public interface Witness {

  Optional<LinkState> link(String station);

  /** The last minutes' heartbeats, ascending. */
  List<HeardBeat> beats(String station);

  Optional<FaultCounts> faults(String station);

  Optional<StoreState> store(String station);

  /** The last time that this computer's clock jumped. */
  Optional<ClockStep> clockStep();
}
