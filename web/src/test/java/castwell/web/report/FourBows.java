package castwell.web.report;

import castwell.capture.intake.sheet.SheetKind;
import java.util.List;
import java.util.Map;

/**
 * Four bows in four sessions, for figures that were reckoned elsewhere: Ash is reworked half-way
 * and 2 % faster then, Elm and Yew are left as they were, Oak is changed as well.
 */
public final class FourBows {
  private static final List<String> SESSIONS =
      List.of("2026-04-10", "2026-04-20", "2026-05-10", "2026-05-20");
  private static final double[] DAYS = {1, 1.006, 0.995, 1.003};
  private static final Map<String, Double> ARROWS =
      Map.of("A400", 1.09, "A500", 1.0, "A650", 0.895);

  private FourBows() {}

  public static void shoot(TypedSeason season) {
    season.take(
        SheetKind.BOWS,
        """
        bow,state_on,draw_weight_lb,draw_length_in
        Ash,2026-04-01,50,27
        Ash,2026-05-01,48,27
        Elm,2026-04-01,50,27
        Yew,2026-04-01,50,27
        Oak,2026-04-01,50,27
        Oak,2026-05-01,50,27
        """);
    season.take(SheetKind.ARROWS, "arrow,mass_gr\nA400,400\nA500,500\nA650,650\n");
    for (int j = 0; j < SESSIONS.size(); j++) {
      shoot(season, "Ash", j, 150 * (j > 1 ? 1.02 : 1), 0.001, -0.002, 0.002, 0);
      shoot(season, "Elm", j, 145, -0.001, 0.002, 0, 0.001);
      shoot(season, "Yew", j, 155, 0.002, 0, -0.001, -0.002);
      shoot(season, "Oak", j, 148, 0, 0.001, 0.001, -0.001);
    }
    season.takeShots();
  }

  private static void shoot(
      TypedSeason season, String bow, int session, double fps, double... own) {
    ARROWS.forEach(
        (arrow, factor) -> {
          double mean = fps * factor * DAYS[session] * (1 + own[session]);
          for (double speed : TypedSeason.speeds(mean, 0.9, 4)) {
            season.shot(bow, arrow, SESSIONS.get(session), speed);
          }
        });
  }
}
