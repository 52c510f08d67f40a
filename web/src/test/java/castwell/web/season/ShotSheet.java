package castwell.web.season;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** What a person writes down of each shot, and which of them were plucked. */
final class ShotSheet {
  /** Standard uncertainty of a display that served all sessions, and of one that served one. */
  static final double ONE_DISPLAY_U = 0.005;

  static final double OWN_DISPLAY_U = 0.002;
  private static final double PLUCKED = 0.03;

  private final Shooting shooting;
  private final Random random;
  private final Map<String, String> plucked = new LinkedHashMap<>();
  private final StringBuilder shots =
      new StringBuilder(
          "bow,arrow,speed_fps,fired_at,session,station,speed_u_own_fps,speed_u_common_fps,"
              + "shot_id\n");
  private int count;

  ShotSheet(Shooting shooting, Random random) {
    this.shooting = shooting;
    this.random = random;
  }

  void shot(String bow, double grains, double fps, String at, String session, String display) {
    String id = "s" + ++count;
    double shot = shooting.shot() * scatter();
    if (shooting.release().isPlucked() && random.nextDouble() < PLUCKED) {
      shot -= random.nextDouble(0.05, 0.1);
      plucked.put(id, "%s, A%.0f, %s, %.1f".formatted(bow, grains, session, fps * Math.exp(shot)));
    }
    double speed = fps * Math.exp(shot);
    double common = speed * (shooting.isOneDisplay() ? ONE_DISPLAY_U : OWN_DISPLAY_U);
    shots.append(
        String.format(
            Locale.ROOT,
            "%s,A%.0f,%.1f,%s,%s,%s,0.03,%.6f,%s%n",
            bow,
            grains,
            speed,
            at,
            session,
            display,
            common,
            id));
  }

  private double scatter() {
    double normal = random.nextGaussian();
    if (!shooting.release().hasTails()) {
      return normal;
    }
    double chi2 = 0;
    for (int i = 0; i < 5; i++) {
      chi2 += Math.pow(random.nextGaussian(), 2);
    }
    return normal / Math.sqrt(chi2 / 5) * Math.sqrt(3.0 / 5);
  }

  String csv() {
    return shots.toString();
  }

  /** The shots that were plucked, by name. */
  Map<String, String> plucked() {
    return plucked;
  }

  /** They are called s1 and so on. */
  int count() {
    return count;
  }
}
