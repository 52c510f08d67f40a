package castwell.capture.cell;

import castwell.capture.store.Transaction;
import java.util.Set;
import java.util.stream.Collectors;

/** The names of the set-ups of gates that cells were shot through. */
public final class SetUps {
  private SetUps() {}

  static String name(String station, long calibrationId) {
    return station + ", calibration " + calibrationId;
  }

  /** Those whose spacing nobody measured. */
  public static Set<String> unmeasured(Transaction t) {
    return t.calibrations().all().stream()
        .filter(entry -> !entry.calibration().isMeasured())
        .map(entry -> name(entry.station(), entry.id()))
        .collect(Collectors.toSet());
  }
}
