package castwell.capture.view.broker;

import castwell.capture.view.health.StationHealth;
import castwell.capture.view.plan.PlanView;
import castwell.capture.view.schema.SchemaMaker;
import castwell.capture.view.station.TagsView;
import java.util.Locale;

/**
 * The messages under each topic, those that are sent and those that are received, with the shape of
 * each.
 */
public enum Payload {
  SHOT(
      ShotTold.class,
      "A shot",
      "Topic castwell/STATION/shot, QoS 1: a shot that is new, or of which something changed; the last one with its shot_id holds. What isn't known is null."),
  REFRESH(
      RefreshTold.class,
      "Something earlier changed",
      "Topic castwell/STATION/refresh, QoS 1: what was told before may not hold any more."),
  STATUS(
      StatusTold.class,
      "How a station stands",
      "Topic castwell/STATION/status, QoS 1, retained; offline is also the last will."),
  TAGS(
      TagsView.class,
      "Who shoots what",
      "Topic castwell/STATION/tags, QoS 1, retained. What isn't known is null."),
  TAGS_SET(
      TagWish.class,
      "Who is to shoot what",
      "Topic castwell/STATION/tags/set, to Castwell: tags for the shots from now on. It is heard while Castwell is connected, and not when retained before."),
  TAGS_REFUSED(
      RefusalTold.class,
      "A wish that couldn't be met",
      "Topic castwell/STATION/tags/refused, QoS 1: why what came to tags/set wasn't done."),
  HEALTH(
      StationHealth.class, "How a station is", "Topic castwell/STATION/health, QoS 1, every 30 s."),
  PLAN(
      PlanView.class,
      "The plan at a station",
      "Topic castwell/STATION/plan, QoS 1, retained; empty where none was begun.");

  private final Class<?> shape;
  private final String title;
  private final String description;

  Payload(Class<?> shape, String title, String description) {
    this.shape = shape;
    this.title = title;
    this.description = description;
  }

  /** The payload's name, after its topic below the station's. */
  public String named() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What the payload tells, in a few words. */
  public String title() {
    return title;
  }

  /** The payload's JSON Schema (2020-12), made of the shape that is written. */
  public String schema() {
    return SchemaMaker.document(shape, title, description);
  }
}
