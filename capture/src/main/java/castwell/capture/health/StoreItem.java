package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.station.StoreState;

/** Whether what comes gets onto the disk. */
final class StoreItem {
  private static final String NAME = "store";

  private StoreItem() {}

  static Item of(Vitals vitals) {
    return vitals
        .store()
        .map(StoreItem::of)
        .orElseGet(
            () ->
                Item.cantTell(
                    NAME, Phrase.of("health.store_none"), Phrase.of("health.store_start")));
  }

  private static Item of(StoreState store) {
    Item item =
        store
            .trouble()
            .map(
                trouble ->
                    Item.bad(
                        NAME,
                        Phrase.of(
                            store.full() ? "health.store_full" : "health.store_waiting",
                            trouble,
                            store.waiting()),
                        Phrase.of("health.store_now")))
            .orElseGet(() -> Item.well(NAME, Phrase.of("health.store")));
    return item.with(Measured.plain(store.waiting(), "passages wait"));
  }
}
