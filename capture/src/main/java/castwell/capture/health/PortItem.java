package castwell.capture.health;

import castwell.capture.daemon.LinkState;

/** Whether the board's port is there and open. */
final class PortItem {
  static final String NAME = "port";

  private PortItem() {}

  static Item of(Vitals vitals) {
    return vitals
        .link()
        .map(PortItem::of)
        .orElseGet(
            () ->
                Item.cantTell(
                    NAME,
                    "The running Castwell has the port, and wasn't asked.",
                    "Look at its page, or stop it and check again."));
  }

  private static Item of(LinkState link) {
    return switch (link.state()) {
      case ONLINE -> Item.well(NAME, "%s is open, and a board answers.".formatted(link.port()));
      case WAITING ->
          Item.cantTell(NAME, link.sentence(), "Wait some seconds for its first heartbeat.");
      case SEARCHING ->
          Item.bad(
              NAME,
              link.sentence(),
              "Plug the board in, or name its port in castwell.toml, under [[station]].");
      case OFFLINE ->
          Item.bad(
              NAME,
              "%s is open, and no board beats there.".formatted(link.port()),
              "Check the board's supply and its cable; then unplug it and plug it in again.");
      case UNPLUGGED ->
          Item.bad(NAME, link.sentence(), "Plug the board in again: it is found by itself.");
    };
  }
}
