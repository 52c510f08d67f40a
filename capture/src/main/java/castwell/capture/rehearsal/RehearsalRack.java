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
          bow("Wren", "ash", 40, 27, 37, 0.0095, "new string"),
          bow("Tamar", "elm", 45, 28, 42, 0.012, "tiller evened"),
          bow("Heron", "yew", 50, 28, 50, 0.009, "tips lightened"),
          bow("Bittern", "hazel", 52, 28.5, 46, 0.016, "belly heat treated"),
          bow("Dunnock", "black locust", 55, 28, 56, 0.008, "tips recurved"));

  private static final List<RehearsalArrow> ARROWS =
      List.of(
          arrow("Reed", 330, 28.25, 0.3125),
          arrow("Sedge", 410, 28.75, 0.3125),
          arrow("Willow", 495, 29.25, 0.34375),
          arrow("Alder", 585, 29.75, 0.34375),
          arrow("Oak", 685, 30.75, 0.359375));

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

  /** The bow of that name, else the first: somebody shoots whatever the tags say. */
  static RehearsalBow bow(String name) {
    return BOWS.stream().filter(bow -> bow.name().equals(name)).findFirst().orElse(BOWS.get(0));
  }

  /** The arrow of that name, else the first. */
  static RehearsalArrow arrow(String name) {
    return ARROWS.stream()
        .filter(arrow -> arrow.name().equals(name))
        .findFirst()
        .orElse(ARROWS.get(0));
  }
}
