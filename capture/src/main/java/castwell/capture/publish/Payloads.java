package castwell.capture.publish;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Wording;
import castwell.capture.station.LinkState;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import castwell.capture.view.Json;
import castwell.capture.view.broker.Changed;
import castwell.capture.view.broker.Presence;
import castwell.capture.view.broker.RefreshTold;
import castwell.capture.view.broker.RefusalTold;
import castwell.capture.view.broker.ShotTold;
import castwell.capture.view.broker.StatusTold;
import castwell.capture.view.health.StationHealth;
import castwell.capture.view.plan.PlanView;
import castwell.capture.view.shot.ShotViews;
import castwell.capture.view.station.TagsInForce;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Optional;

/** The JSON payloads of all messages. Their schemas are made of the same shapes. */
final class Payloads {
  private final ZoneId zone;
  private final Wording wording;
  private final ShotViews shots;
  private final String version;
  private final Clock clock;

  /**
   * @param version this program's version
   */
  Payloads(ZoneId zone, Wording wording, String version, Clock clock) {
    this.zone = zone;
    this.wording = wording;
    this.shots = new ShotViews(zone, wording);
    this.version = version;
    this.clock = clock;
  }

  /** A phrase in the language of the messages. */
  String say(Phrase phrase) {
    return wording.say(phrase);
  }

  /**
   * @param event the item of the feed that tells of the shot
   */
  String shot(long event, Shot shot) {
    return Json.text(new ShotTold(event, shots.of(shot)));
  }

  static String refresh(long event, String station, Changed what, Optional<String> shotId) {
    return Json.text(new RefreshTold(event, station, what, shotId));
  }

  String tags(Transaction t, String station) {
    return Json.text(TagsInForce.of(t, station, clock.instant(), zone));
  }

  String online(LinkState link) {
    return Json.text(
        new StatusTold(
            link.station(),
            Presence.ONLINE,
            version,
            Optional.of(link.state()),
            say(link.sentence()),
            link.device(),
            Optional.of(link.since())));
  }

  /** The state that the broker also announces when the connection breaks. */
  String offline(String station) {
    return Json.text(
        new StatusTold(
            station,
            Presence.OFFLINE,
            version,
            Optional.empty(),
            say(Phrase.of("broker.ended")),
            Optional.empty(),
            Optional.empty()));
  }

  static String health(StationHealth health) {
    return Json.text(health);
  }

  /** An empty text makes the broker drop what it kept. */
  static String plan(Optional<PlanView> plan) {
    return plan.map(Json::text).orElse("");
  }

  String refused(String station, String sentence) {
    return Json.text(new RefusalTold(station, clock.instant(), sentence));
  }
}
