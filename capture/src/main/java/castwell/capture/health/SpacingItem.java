package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import java.util.Optional;

/** Says when nobody measured how far the gates stand apart, on which every speed rests. */
final class SpacingItem {
  private static final Subject SUBJECT = Subject.of("spacing", "health.title_spacing");

  private SpacingItem() {}

  /** Empty where it was measured. */
  static Optional<Item> of(Vitals vitals) {
    return vitals.isSpacingMeasured()
        ? Optional.empty()
        : Optional.of(
            Item.cantTell(
                SUBJECT,
                Phrase.of("health.spacing_unmeasured"),
                Phrase.of("health.spacing_measure")));
  }
}
