package castwell.capture.health;

import castwell.analysis.gates.FrontOverTail;
import castwell.analysis.gates.GateFindings;
import castwell.analysis.wording.Phrase;
import castwell.capture.gates.GateWords;
import java.util.List;
import java.util.Optional;

/** Judges what the arrows of the session that goes on tell of the gates. */
final class GatesItem {
  private static final Subject SUBJECT = Subject.of("gates", "health.title_gates");

  private GatesItem() {}

  /** Empty while too few were shot to tell. */
  static Optional<Item> of(GateFindings found) {
    FrontOverTail both = found.frontOverTail();
    return both.isEnough()
        ? Optional.of(
            item(found).with(Measured.within(-both.meanM() * 1e3, "mm", both.uM() * 1e3, both.n())))
        : Optional.empty();
  }

  private static Item item(GateFindings found) {
    List<Phrase> told = GateWords.of(found);
    return told.isEmpty()
        ? Item.well(SUBJECT, Phrase.of("health.gates_well", found.frontOverTail().n()))
        : Item.attention(SUBJECT, told.get(0), remedy(found));
  }

  private static Phrase remedy(GateFindings found) {
    if (found.frontOverTailNamed()) {
      return Phrase.of("health.gates_ends");
    }
    return Phrase.of(found.trendNamed() ? "health.gates_moved" : "health.gates_spacing");
  }
}
