package castwell.capture.health;

import castwell.analysis.wording.Phrase;
import castwell.capture.station.LinkState;

/** Judges whether the board's port exists and is open. */
final class PortItem {
  private static final Subject SUBJECT = Subject.of("port", "health.title_port");

  private PortItem() {}

  static Item of(Vitals vitals) {
    return vitals
        .link()
        .map(PortItem::of)
        .orElseGet(
            () ->
                Item.cantTell(
                    SUBJECT, Phrase.of("health.port_unasked"), Phrase.of("health.port_ask")));
  }

  private static Item of(LinkState link) {
    return switch (link.state()) {
      case ONLINE -> Item.well(SUBJECT, Phrase.of("health.port", link.port()));
      case WAITING -> Item.cantTell(SUBJECT, link.sentence(), Phrase.of("health.port_wait"));
      case SEARCHING -> Item.bad(SUBJECT, link.sentence(), Phrase.of("health.port_plug"));
      case OFFLINE ->
          Item.bad(
              SUBJECT,
              Phrase.of("health.port_silent", link.port()),
              Phrase.of("health.port_replug"));
      case UNPLUGGED -> Item.bad(SUBJECT, link.sentence(), Phrase.of("health.port_again"));
    };
  }
}
