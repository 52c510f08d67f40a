package castwell.capture.measure;

import static castwell.capture.measure.Entry.measured;
import static castwell.capture.measure.Entry.words;

/** What may be known of a bow's state, in the order of the tables. */
public enum BowMeasure implements Measure {
  NOCK_TO_NOCK(measured(Scale.DRAW_LENGTH, 20, 90, "in", "length unstrung between the nocks")),
  /** String follow is below 0 where the unstrung tips stand before the back. */
  STRING_FOLLOW(
      measured(Scale.LENGTH, -10, 15, "in", "how far the unstrung tips stay behind the back")),
  BRACE_HEIGHT(measured(Scale.LENGTH, 2, 15, "in", "string to the grip")),
  MASS(measured(Scale.BOW_MASS, 0.1, 5, "kg", "of the bow")),
  WOOD(words("of what it is made")),
  TIP_WIDTH(measured(Scale.FINE_LENGTH, 2, 60, "mm", "at the nocks")),
  STRING_MASS(measured(Scale.ARROW_MASS, 10, 1000, "gr", "of the string")),
  /**
   * Tiller is below 0 where the lower limb's distance is the larger one. The limits are common
   * practice, no source.
   */
  TILLER(
      measured(
              Scale.FINE_LENGTH,
              -50,
              50,
              "mm",
              "upper less lower limb, string to belly at the fades")
          .toldOfRework()),
  TIP_THICKNESS(
      measured(Scale.FINE_LENGTH, 2, 60, "mm", "back to belly at the nocks").toldOfRework());

  private final Entry entry;

  BowMeasure(Entry entry) {
    this.entry = entry;
  }

  @Override
  public Entry entry() {
    return entry;
  }

  @Override
  public String textGroup() {
    return "bow";
  }
}
