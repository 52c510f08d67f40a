package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/**
 * Every page there is, and a rack with three outings to show on them. Invented: nothing is checked
 * by its figures.
 */
final class Workbench {
  /** How large somebody's screen is. */
  record Screen(String name, int width, int height) {}

  static final Screen PHONE = new Screen("phone", 360, 740);
  static final Screen DESKTOP = new Screen("desktop", 1440, 900);
  static final List<Screen> SCREENS = List.of(PHONE, new Screen("tablet", 768, 1024), DESKTOP);

  /** What the range page's buttons open. */
  private static final Map<String, String> SHEETS =
      new TreeMap<>(
          Map.of(
              "which-bow", "#bow",
              "which-arrow", "#arrow",
              "a-plan", "#plan-open",
              "a-speed", "#typed"));

  private static final Map<String, double[]> BOWS =
      new TreeMap<>(
          Map.of(
              "Alder", new double[] {47.6, 26.8, 40.7, 234},
              "Hazel", new double[] {43.7, 26.3, 35.8, 297},
              "Rowan", new double[] {54.2, 27.6, 50.6, 343},
              "Whitethorn", new double[] {49.3, 27.2, 43.9, 258}));
  private static final Map<String, Integer> ARROWS =
      new TreeMap<>(Map.of("Birch", 417, "Cedar", 488, "Pine", 563, "Ramin", 641));
  private static final String REWORK = "2026-05-01";

  private Workbench() {}

  /** Each page by a name for its picture. */
  static Map<String, String> pages(boolean full) {
    Map<String, String> pages = new TreeMap<>();
    pages.put("range", "/");
    pages.put("enter", "/enter");
    pages.put("rack", "/rack");
    pages.put("arrows", "/arrows");
    pages.put("sessions", "/sessions");
    pages.put("rework", "/rework");
    pages.put("reach", full ? "/reach?like_bow=Alder&like_arrow=Pine" : "/reach");
    pages.put("plan", full ? "/plan?bow=Rowan&control=Alder&change=2" : "/plan");
    pages.put("gates", "/gates.html");
    pages.put("calibration", "/calibration");
    pages.put("data", "/data");
    if (full) {
      pages.put("bow", "/bows/Rowan");
      pages.put("card", "/bows/Alder/card");
      pages.put("session", "/sessions/2026-05-10");
      pages.put("session-end", "/sessions/2026-05-10?from=50");
      pages.put("rework-refused", "/rework?bow=Alder&before=2026-05-10&after=2026-05-10");
    }
    return pages;
  }

  /** The same with a shot's own, where there are shots. */
  static Map<String, String> sheets(boolean full) {
    Map<String, String> sheets = new TreeMap<>(SHEETS);
    if (full) {
      sheets.put("a-shot", "#verdict");
    }
    return sheets;
  }

  /** A browser that opens page after page holds more places than a person's. */
  static Served serve(Path folder) {
    return Served.with(folder, "readers_per_address = 1000\nconnections_per_address = 2000\n");
  }

  /** Until all is there that comes after the page itself. */
  static void settle(Visit visit, String path) {
    visit.page().waitForLoadState();
    if (path.equals("/gates.html")) {
      assertThat(visit.by("#items > li").first()).isVisible();
    } else if (path.equals("/")) {
      assertThat(visit.by("#version")).containsText("Castwell");
    }
  }

  static void openSheet(Visit visit, String button) {
    settle(visit, "/");
    visit.by(button).click();
    assertThat(visit.by("#sheet")).isVisible();
  }

  /** By the same API as the pages use. */
  static void fill(Served served) {
    BOWS.forEach(
        (name, bow) ->
            post(
                served,
                "/api/bows",
                """
                {"name":"%s","state_on":"2026-03-01","draw_weight_lb":%.1f,"draw_length_in":%.1f,
                 "nock_to_nock_in":66.4,"string_follow_in":1.2,"brace_height_in":6.3,"mass_lb":1.27,"wood":"elm",
                 "tip_width_mm":12,"done":"first tillered"}""",
                name,
                bow[0],
                bow[1]));
    ARROWS.forEach(
        (name, grains) ->
            post(
                served,
                "/api/arrows",
                """
                {"name":"%s","mass_gr":%d,"length_in":29.5,"diameter_in":0.344,"point":"field"}""",
                name,
                grains));
    post(
        served,
        "/api/bows/Rowan/states",
        """
        {"state_on":"%s","draw_weight_lb":52.7,"draw_length_in":27.6,"string_follow_in":1.5,"tip_width_mm":9,
         "done":"tips narrowed"}""",
        REWORK);
    post(
        served,
        "/api/bows/Alder/force-draw",
        """
        {"state_on":"2026-03-01","points":[{"draw_length_in":8,"draw_force_lb":2,"let_down_lb":2},
         {"draw_length_in":14,"draw_force_lb":20,"let_down_lb":19},
         {"draw_length_in":22,"draw_force_lb":36,"let_down_lb":34},
         {"draw_length_in":26.8,"draw_force_lb":47.6,"let_down_lb":47.6}]}""");
    post(
        served, "/api/import", "{\"what\":\"shots\",\"csv\":\"%s\"}", shots().replace("\n", "\\n"));
    served.commands().tag("range", Optional.of("Alder"), Optional.of("Pine"), "test");
    post(served, "/api/stations/range/readings", "{\"speed_fps\":130.9}");
  }

  private static void post(Served served, String path, String body, Object... values) {
    Asked asked = Asked.send("POST", served.at(path), String.format(Locale.ROOT, body, values));
    if (asked.status() != 201) {
      throw new AssertionError(path + ": " + asked.json());
    }
  }

  private static String shots() {
    Random random = new Random(7);
    StringBuilder csv = new StringBuilder("bow,arrow,speed_fps,fired_at,session\n");
    for (String day : List.of("2026-04-10", "2026-05-10", "2026-06-01")) {
      LocalDateTime fired = LocalDateTime.parse(day + "T09:00:00");
      for (var bow : BOWS.entrySet()) {
        boolean lighter = bow.getKey().equals("Rowan") && day.compareTo(REWORK) > 0;
        double k = bow.getValue()[3] * (lighter ? 0.8 : 1);
        for (var arrow : ARROWS.entrySet()) {
          for (int i = 0; i < 7; i++) {
            double kg = (arrow.getValue() + k) * 64.79891e-6;
            double fps =
                Math.sqrt(2 * bow.getValue()[2] / kg) / 0.3048 + 1.1 * random.nextGaussian();
            boolean plucked =
                i == 5 && bow.getKey().equals("Hazel") && arrow.getKey().equals("Pine");
            csv.append(
                String.format(
                    Locale.ROOT,
                    "%s,%s,%.1f,%s,%s%n",
                    bow.getKey(),
                    arrow.getKey(),
                    plucked ? fps - 22 : fps,
                    fired,
                    day));
            fired = fired.plusSeconds(25);
          }
        }
      }
    }
    return csv.toString();
  }
}
