package castwell.capture.measure;

import static castwell.capture.measure.Entry.measured;
import static castwell.capture.measure.Entry.words;

import java.util.Optional;

/** What may be known of an arrow besides its mass, in the order of the tables. */
public enum ArrowMeasure implements Measure {
  LENGTH(measured(Scale.LENGTH, 10, 45, "in", "from the tip to the end of the nock")),
  DIAMETER(measured(Scale.DIAMETER, 0.1, 1, "in", "of the shaft")),
  SPINE(
      measured(
          Scale.DEFLECTION, 50, 3000, "mil", "how far a weight bends the shaft at its middle")),
  /**
   * A span of 28 in with a weight of 1.94 lb is common practice, and so are 26 in with 2 lb;
   * neither has a source.
   */
  SPINE_SPAN(
      measured(Scale.DRAW_LENGTH, 10, 40, "in", "between the supports of the spine, usually 28"),
      SPINE,
      28),
  SPINE_WEIGHT(measured(Scale.LOAD, 1, 10, "lb", "that bent the spine, usually 1.94"), SPINE, 1.94),
  POINT(words("what kind of point")),
  NOTE(words("a person's words"));

  private final Entry entry;
  private final Optional<Usual> usual;

  ArrowMeasure(Entry entry) {
    this.entry = entry;
    this.usual = Optional.empty();
  }

  ArrowMeasure(Entry entry, ArrowMeasure with, double usual) {
    this.entry = entry;
    this.usual = entry.number().map(number -> new Usual(with, usual * number.scale().si()));
  }

  @Override
  public Entry entry() {
    return entry;
  }

  @Override
  public String textGroup() {
    return "arrows";
  }

  @Override
  public Optional<Usual> usual() {
    return usual;
  }
}
