package castwell.web.season;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** A season whose truth is known, and what a person would write down of it, as sheets. */
final class TrueSeason {
  static final String BEGAN = "2026-03-01";
  private static final double[][] MASSES = {
    {400, 480, 580}, {400, 460, 530, 610}, {380, 430, 490, 550, 620}
  };
  private static final String[] NAMES = {"Ash", "Elm", "Yew", "Oak", "Fir"};
  private static final int[] UNEVEN = {3, 5, 10};
  private static final double MISSING = 0.1;
  private static final double WEIGHING_GR = 1;

  private final Random random;
  private final Shooting shooting;
  private final int usualShots;
  private final List<TrueBow> bows = new ArrayList<>();
  private final TrueBow reworked;
  private final Map<Double, Double> arrows = new LinkedHashMap<>();
  private final Map<String, Double> effects = new LinkedHashMap<>();
  private final Map<String, Double> bowDays = new LinkedHashMap<>();
  private final Map<String, Double> displayErrors = new LinkedHashMap<>();
  private final ShotSheet shots;
  private final List<String> sessions = new ArrayList<>();
  private final double displayError;

  TrueSeason(Shooting shooting, Random random) {
    this.shooting = shooting;
    this.random = random;
    shots = new ShotSheet(shooting, random);
    usualShots = UNEVEN[random.nextInt(UNEVEN.length)];
    for (int b = 0; b <= shooting.controls(); b++) {
      bows.add(TrueBow.any(NAMES[b], random));
    }
    reworked = bows.get(0).fasterBy(shooting.change());
    for (double grains : MASSES[random.nextInt(MASSES.length)]) {
      arrows.put(grains, grains + WEIGHING_GR * random.nextGaussian());
      bows.forEach(
          bow -> effects.put(bow.name() + grains, shooting.arrow() * random.nextGaussian()));
    }
    displayError = ShotSheet.ONE_DISPLAY_U * random.nextGaussian();
    shoot();
  }

  private void shoot() {
    if (shooting.sessions() == 0) {
      session("2026-06-15", true, true);
    }
    for (int j = 0; j < shooting.sessions(); j++) {
      session("2026-04-%02d".formatted(1 + 7 * j), true, false);
    }
    for (int j = 0; j < shooting.sessions(); j++) {
      session("2026-07-%02d".formatted(1 + 7 * j), false, true);
    }
  }

  private void session(String name, boolean isBefore, boolean isAfter) {
    sessions.add(name);
    double day = shooting.day() * random.nextGaussian();
    boolean isOne = shooting.isOneDisplay();
    double error = isOne ? displayError : ShotSheet.OWN_DISPLAY_U * random.nextGaussian();
    displayErrors.put(name, error);
    String display = isOne ? "display" : "display-" + name;
    for (TrueBow bow : bows) {
      double effect = day + shooting.bowDay() * random.nextGaussian();
      bowDays.put(bow.name() + name, effect);
      if (isBefore || !bow.equals(bows.get(0))) {
        cells(bow, name, name + "T14", effect + error, display);
      }
      if (isAfter && bow.equals(bows.get(0))) {
        cells(reworked, name, name + "T16", effect + error, display);
      }
    }
  }

  private void cells(TrueBow bow, String session, String hour, double log, String display) {
    int second = 0;
    int left = arrows.size();
    for (double grains : arrows.keySet()) {
      boolean isMissing = shooting.areUneven() && left > 2 && random.nextDouble() < MISSING;
      left -= isMissing ? 1 : 0;
      int n = shooting.areUneven() ? UNEVEN[random.nextInt(UNEVEN.length)] : usualShots;
      double fps = bow.fps(arrows.get(grains)) * Math.exp(log + effects.get(bow.name() + grains));
      for (int i = 0; i < n && !isMissing; i++) {
        String at = "%s:%02d:%02d".formatted(hour, second / 60, second % 60);
        second += 40;
        shots.shot(bow.name(), grains, fps, at, session, display);
      }
    }
  }

  String bowSheet() {
    StringBuilder sheet = new StringBuilder("bow,state_on,draw_weight_lb,draw_length_in,done\n");
    bows.forEach(bow -> line(sheet, bow, BEGAN, ""));
    line(sheet, reworked, reworkedOn(), "scraped");
    return sheet.toString();
  }

  private static void line(StringBuilder sheet, TrueBow bow, String since, String done) {
    sheet.append(
        String.format(
            Locale.ROOT, "%s,%s,%.0f,28,%s%n", bow.name(), since, bow.drawWeightLb(), done));
  }

  String arrowSheet() {
    StringBuilder sheet = new StringBuilder("arrow,mass_gr\n");
    arrows.keySet().forEach(gr -> sheet.append(String.format(Locale.ROOT, "A%.0f,%.0f%n", gr, gr)));
    return sheet.toString();
  }

  String reworkedOn() {
    return shooting.sessions() == 0 ? "2026-06-15T15:00" : "2026-06-15";
  }

  /** The first first. */
  List<String> sessions() {
    return sessions;
  }

  Shooting shooting() {
    return shooting;
  }

  /** As it was after the rework. */
  TrueBow reworked() {
    return reworked;
  }

  List<TrueBow> bows() {
    return bows;
  }

  /** By what share of the log a bow's session was off, the display's error left out. */
  double bowDay(String bow, String session) {
    return bowDays.get(bow + session);
  }

  double displayError(String session) {
    return displayErrors.get(session);
  }

  /** What an arrow does on a bow alone. */
  double effect(String bow, double grains) {
    return effects.get(bow + grains);
  }

  /** Masses as entered, with those that the arrows truly have. */
  Map<Double, Double> arrows() {
    return arrows;
  }

  ShotSheet shots() {
    return shots;
  }
}
