package castwell.capture.publish;

import castwell.analysis.wording.Phrase;
import castwell.analysis.wording.Wording;
import castwell.capture.station.LinkState;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import castwell.capture.view.Column;
import castwell.capture.view.shot.ShotColumns;
import castwell.capture.view.station.TagsInForce;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What is published, as JSON; each has its schema beside this class. */
final class Payloads {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final ZoneId zone;
  private final Wording wording;
  private final ShotColumns columns;
  private final String version;
  private final Clock clock;

  /**
   * @param version the program's
   */
  Payloads(ZoneId zone, Wording wording, String version, Clock clock) {
    this.zone = zone;
    this.wording = wording;
    this.columns = new ShotColumns(zone, wording);
    this.version = version;
    this.clock = clock;
  }

  /** In the language of what is published. */
  String say(Phrase phrase) {
    return wording.say(phrase);
  }

  /**
   * @param event the feed's item that tells of it
   */
  String shot(long event, Shot shot) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("event", event);
    fields.putAll(Column.row(columns.columns(), shot));
    return text(fields);
  }

  /**
   * @param what changed: the figures of earlier shots, or the rack, or one shot was joined to
   *     another
   */
  String refresh(long event, String station, String what, Optional<String> shotId) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("event", event);
    fields.put("station", station);
    fields.put("what", what);
    fields.put("shot_id", shotId.orElse(null));
    return text(fields);
  }

  String tags(Transaction t, String station) {
    return text(TagsInForce.row(t, station, clock.instant(), zone));
  }

  String online(LinkState link) {
    Map<String, Object> fields = status(link.station(), "online");
    fields.put("link", link.state().name().toLowerCase(Locale.ROOT));
    fields.put("sentence", say(link.sentence()));
    fields.put("device", link.device().orElse(null));
    fields.put("since", link.since().toString());
    return text(fields);
  }

  /** Also what the broker says when the connection breaks. */
  String offline(String station) {
    Map<String, Object> fields = status(station, "offline");
    fields.put("link", null);
    fields.put("sentence", say(Phrase.of("broker.ended")));
    fields.put("device", null);
    fields.put("since", null);
    return text(fields);
  }

  private Map<String, Object> status(String station, String status) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("station", station);
    fields.put("status", status);
    fields.put("version", version);
    return fields;
  }

  String health(String station, Map<String, Object> health) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("station", station);
    fields.put("at", clock.instant().toString());
    fields.putAll(health);
    return text(fields);
  }

  /** Empty text takes back what the broker kept. */
  static String plan(Optional<Map<String, Object>> plan) {
    return plan.map(Payloads::text).orElse("");
  }

  String refused(String station, String sentence) {
    Instant now = clock.instant();
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("station", station);
    fields.put("at", now.toString());
    fields.put("sentence", sentence);
    return text(fields);
  }

  private static String text(Map<String, Object> fields) {
    try {
      return JSON.writeValueAsString(fields);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
