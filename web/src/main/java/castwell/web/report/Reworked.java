package castwell.web.report;

import castwell.analysis.compare.Change;
import castwell.analysis.compare.Conclusion;
import castwell.analysis.compare.Control;
import castwell.analysis.compare.WhatMoved;
import castwell.analysis.uncertainty.Quantity;
import castwell.capture.store.Rack.BowState;
import java.util.List;
import java.util.Optional;

/**
 * What came of a rework.
 *
 * @param controls the names of the bows that were left as they were
 * @param change of the bow itself, with the same arrows
 * @param effect what is left of it without the day, in m/s
 * @param sameGpp the change of cast at the same grains per pound, likewise; empty without curves
 */
record Reworked(
    Pair bow,
    List<String> controls,
    Change change,
    Control control,
    Quantity effect,
    Optional<Quantity> sameGpp,
    Optional<WhatMoved> moved) {

  /** One bow on both days. */
  record Pair(Day before, Day after, BowState stateBefore, BowState stateAfter) {}

  /** With all its uncertainty. */
  Conclusion conclusion() {
    return Conclusion.of(effect);
  }
}
