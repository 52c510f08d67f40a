package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.station.StoreState;

/** Judges whether what comes reaches the disk. */
final class StoreItem {
  private static final Subject SUBJECT = Subject.of("store", "health.title_store");

  private StoreItem() {}

  static Item of(Vitals vitals) {
    return vitals
        .store()
        .map(StoreItem::of)
        .orElseGet(
            () ->
                Item.cantTell(
                    SUBJECT, Phrase.of("health.store_none"), Phrase.of("health.store_start")));
  }

  private static Item of(StoreState store) {
    Item item =
        store
            .trouble()
            .map(
                trouble ->
                    Item.bad(
                        SUBJECT,
                        Phrase.of(
                            store.full() ? "health.store_full" : "health.store_waiting",
                            trouble,
                            store.waiting()),
                        Phrase.of("health.store_now")))
            .orElseGet(() -> Item.well(SUBJECT, Phrase.of("health.store")));
    return item.with(Measured.plain(store.waiting(), "passages wait"));
  }
}
