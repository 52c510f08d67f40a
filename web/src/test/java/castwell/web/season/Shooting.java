package castwell.web.season;

import java.util.Random;

/**
 * How a season is shot, and how its errors scatter; relative standard deviations.
 *
 * @param sessions before the first bow's rework, and as many after it; 0 is both in one session
 * @param controls bows shot along and left as they are
 * @param day of a day, alike for all bows
 * @param bowDay of a bow's own day
 * @param arrow of what an arrow does on one bow alone
 * @param areUneven whether cells have three, five or ten shots, and some none
 * @param isOneDisplay whether one display served all sessions, or each its own
 * @param change what the rework does to the log of the speed
 */
record Shooting(
    int sessions,
    int controls,
    double day,
    double bowDay,
    double arrow,
    double shot,
    Release release,
    boolean areUneven,
    boolean isOneDisplay,
    double change) {
  /** From days that are all alike to such as hardly come. */
  static final double[][] DAYS = {{0, 0}, {0.003, 0.002}, {0.006, 0.004}, {0.01, 0.006}};

  static final int[] SESSIONS = {0, 1, 2, 4};
  static final int[] CONTROLS = {0, 1, 2, 4};
  static final double CHANGE = 0.015;

  private static final double[] ARROW = {0, 0.002, 0.003};
  private static final double[] SHOT = {0.003, 0.006, 0.01};

  /** How shots scatter. */
  enum Release {
    NORMAL,
    /** Student's t with 5 degrees of freedom, of the same standard deviation. */
    TAILS,
    /** Normal, but 3 % are 5 to 10 % low. */
    PLUCKED,
    PLUCKED_TAILS;

    boolean isPlucked() {
      return this == PLUCKED || this == PLUCKED_TAILS;
    }

    boolean hasTails() {
      return this == TAILS || this == PLUCKED_TAILS;
    }
  }

  /** The rest by chance; half of all reworks do nothing. */
  static Shooting any(int sessions, int controls, double[] days, Random random) {
    Release[] releases = Release.values();
    return new Shooting(
        sessions,
        controls,
        days[0],
        days[1],
        ARROW[random.nextInt(ARROW.length)],
        SHOT[random.nextInt(SHOT.length)],
        releases[random.nextInt(releases.length)],
        random.nextBoolean(),
        random.nextBoolean(),
        random.nextBoolean() ? 0 : random.nextBoolean() ? CHANGE : -CHANGE);
  }

  String sides() {
    return sessions == 0 ? "in one session" : sessions + " + " + sessions;
  }

  /** A bow was shot in its last state in so many. */
  int sessionsOfState() {
    return Math.max(1, sessions);
  }
}
