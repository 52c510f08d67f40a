package castwell.capture.device.rehearsal;

import java.util.List;

/**
 * Invented bows and arrows to rehearse with. The first bow may shoot every arrow; a heavier one
 * wants a heavier arrow.
 */
public final class RehearsalRack {
  private static final List<RehearsalBow> BOWS =
      List.of(
          new RehearsalBow("Wren", "ash", 178, 0.686, 37, 0.0095, "new string"),
          new RehearsalBow("Tamar", "elm", 200, 0.711, 42, 0.0120, "tiller evened"),
          new RehearsalBow("Heron", "yew", 222, 0.711, 50, 0.0090, "tips lightened"),
          new RehearsalBow("Bittern", "hazel", 231, 0.724, 46, 0.0160, "belly heat treated"),
          new RehearsalBow("Kestrel", "black locust", 245, 0.711, 56, 0.0080, "tips recurved"));

  private static final List<RehearsalArrow> ARROWS =
      List.of(
          new RehearsalArrow("Reed", 0.0215, 0.718, 0.0079),
          new RehearsalArrow("Sedge", 0.0265, 0.731, 0.0079),
          new RehearsalArrow("Willow", 0.0320, 0.743, 0.0087),
          new RehearsalArrow("Alder", 0.0380, 0.756, 0.0087),
          new RehearsalArrow("Oak", 0.0445, 0.781, 0.0091));

  private RehearsalRack() {}

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
