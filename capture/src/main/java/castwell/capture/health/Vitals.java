package castwell.capture.health;

import castwell.analysis.gates.GateFindings;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.station.FaultCounts;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;
import castwell.capture.store.HeardBeat;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What a station's health is judged from, as far as it is known.
 *
 * @param beats those of the last minutes, ascending
 * @param broker empty where none is configured
 * @param earlier beats from before, one every ten minutes, the newest first
 * @param gates what the shots of the session that goes on tell of the gates
 * @param isSpacingMeasured whether somebody measured how far the gates stand apart; also where
 *     nothing is known of any gates
 */
public record Vitals(
    String station,
    Instant at,
    Optional<LinkState> link,
    List<HeardBeat> beats,
    Optional<FaultCounts> faults,
    Optional<StoreState> store,
    Optional<BrokerState> broker,
    Optional<BoardRate> rate,
    List<HeardBeat> earlier,
    Optional<GateFindings> gates,
    boolean isSpacingMeasured) {

  public Optional<HeardBeat> lastBeat() {
    return beats.isEmpty() ? Optional.empty() : Optional.of(beats.get(beats.size() - 1));
  }

  boolean isSilent() {
    return isSilent(link);
  }

  /** Whether it is certain that no board beats now. */
  static boolean isSilent(Optional<LinkState> link) {
    return link.filter(known -> known.state() != LinkState.State.ONLINE).isPresent();
  }
}
