package castwell.web.report.rework;

import castwell.analysis.cell.CellSums;
import castwell.capture.store.Rack.BowState;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is compared on one side, before or after: a bow in one state, over all its sessions or some.
 *
 * @param name as it was asked for
 * @param isState whether that is a state, so that all its sessions are meant
 * @param cells with shots that count, the first session's first
 */
public record Side(
    String name, BowState state, String stateName, boolean isState, List<CellSums> cells) {
  /** What is read of each session by itself is read of so many. */
  private static final int MOST = 8;

  public Set<String> sessions() {
    return Pair.sessions(cells);
  }

  /** Its last sessions: those of a reading of each, which would take long of very many. */
  List<String> nearest() {
    List<String> all = List.copyOf(sessions());
    return all.subList(Math.max(0, all.size() - MOST), all.size());
  }

  /** The same without some sessions. */
  Side without(Set<String> sessions) {
    return new Side(
        name,
        state,
        stateName,
        isState,
        cells.stream().filter(cell -> !sessions.contains(cell.name().session())).toList());
  }

  Set<String> arrows() {
    return cells.stream().map(cell -> cell.name().arrow()).collect(Collectors.toSet());
  }
}
