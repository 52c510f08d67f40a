package castwell.capture.rehearsal;

import castwell.analysis.unit.Units;
import java.util.List;

/**
 * Invented bows and arrows to rehearse with. The first bow may shoot every arrow; a heavier one
 * wants a heavier arrow.
 */
public final class RehearsalRack {
  private static final List<RehearsalBow> BOWS =
      List.of(
          bow("Wren", "ash", 39.4, 26.75, 36.4, 0.0093, "new string"),
          bow("Whimbrel", "elm", 44.3, 27.75, 41.3, 0.0118, "tiller evened"),
          bow("Heron", "yew", 49.2, 28.25, 49.4, 0.0091, "tips lightened"),
          bow("Bittern", "hazel", 51.7, 28.75, 45.6, 0.0157, "belly heat treated"),
          bow("Dunnock", "black locust", 54.6, 27.75, 55.3, 0.0083, "tips recurved"));

  private static final List<RehearsalArrow> ARROWS =
      List.of(
          arrow("Reed", 323, 28.3, 0.3125),
          arrow("Sedge", 408, 28.9, 0.3125),
          arrow("Willow", 491, 29.4, 0.34375),
          arrow("Alder", 577, 29.8, 0.34375),
          arrow("Oak", 662, 30.6, 0.359375));

  private RehearsalRack() {}

  private static RehearsalBow bow(
      String name,
      String wood,
      double drawWeightLb,
      double drawLengthIn,
      double energyJ,
      double virtualMassKg,
      String lastDone) {
    return new RehearsalBow(
        name,
        wood,
        drawWeightLb * Units.NEWTONS_PER_POUND,
        drawLengthIn * Units.METRES_PER_INCH,
        energyJ,
        virtualMassKg,
        lastDone);
  }

  private static RehearsalArrow arrow(
      String name, double massGr, double lengthIn, double diameterIn) {
    return new RehearsalArrow(
        name,
        massGr * Units.KILOGRAMS_PER_GRAIN,
        lengthIn * Units.METRES_PER_INCH,
        diameterIn * Units.METRES_PER_INCH);
  }

  public static List<RehearsalBow> bows() {
    return BOWS;
  }

  public static List<RehearsalArrow> arrows() {
    return ARROWS;
  }

  /** The bow of that name, else the first one, since an archer shoots whatever the tags say. */
  static RehearsalBow bow(String name) {
    return BOWS.stream().filter(bow -> bow.name().equals(name)).findFirst().orElse(BOWS.get(0));
  }

  /** The arrow of that name, else the first one. */
  static RehearsalArrow arrow(String name) {
    return ARROWS.stream()
        .filter(arrow -> arrow.name().equals(name))
        .findFirst()
        .orElse(ARROWS.get(0));
  }
}
