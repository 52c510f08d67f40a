package castwell.web.report.rework;

import castwell.analysis.cell.CellSums;
import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Both sides of a comparison; they have no shot in common. */
public record Sides(Side before, Side after) {

  /**
   * @throws Refused where both are the same shots
   */
  static Sides of(Side before, Side after) {
    if (!before.stateName().equals(after.stateName())) {
      return new Sides(before, after);
    }
    // A session is compared with the other sessions of its own state.
    Side then = before.isState() && !after.isState() ? before.without(after.sessions()) : before;
    Side now = after.isState() && !before.isState() ? after.without(before.sessions()) : after;
    if (then.cells().isEmpty()
        || now.cells().isEmpty()
        || !Collections.disjoint(then.sessions(), now.sessions())) {
      throw Refused.of(Why.INVALID, "refused.same_shots");
    }
    return new Sides(then, now);
  }

  /** Whether nothing is known to have been done in between. */
  public boolean areOneState() {
    return before.stateName().equals(after.stateName());
  }

  /** Whether a session has both, so that its day is the same for both. */
  public boolean shareASession() {
    return !Collections.disjoint(before.sessions(), after.sessions());
  }

  boolean areWholeStates() {
    return before.isState() && after.isState();
  }

  List<CellSums> cells() {
    return Stream.of(before, after).flatMap(side -> side.cells().stream()).toList();
  }

  public Pair bow() {
    return new Pair(before.state().bow(), before.cells(), after.cells());
  }

  /** Of the arrows shot on both sides; of all where there are none. */
  public double meanMassKg() {
    Set<String> shared = before.arrows();
    shared.retainAll(after.arrows());
    return cells().stream()
        .filter(cell -> shared.isEmpty() || shared.contains(cell.name().arrow()))
        .collect(
            Collectors.toMap(
                cell -> cell.name().arrow(), cell -> cell.massKg(), (one, other) -> other))
        .values()
        .stream()
        .mapToDouble(Double::doubleValue)
        .average()
        .orElseThrow();
  }
}
