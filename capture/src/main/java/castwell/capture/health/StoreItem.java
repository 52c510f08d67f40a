package castwell.capture.health;

import castwell.capture.daemon.StoreState;

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
                    NAME, "Nothing is being captured here now.", "Start Castwell to capture."));
  }

  private static Item of(StoreState store) {
    Item item =
        store
            .trouble()
            .map(
                trouble ->
                    Item.bad(
                        NAME,
                        "%s %d passages are kept in memory alone%s."
                            .formatted(
                                trouble,
                                store.waiting(),
                                store.full() ? ", and no more can be" : ""),
                        "Do that now, and don't switch the computer off before."))
            .orElseGet(() -> Item.well(NAME, "What comes gets onto the disk."));
    return item.with(Measured.plain(store.waiting(), "passages wait"));
  }
}
