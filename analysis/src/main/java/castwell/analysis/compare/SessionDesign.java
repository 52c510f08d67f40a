package castwell.analysis.compare;

/**
 * How a rework is to be shot: the same arrows and shots from each bow in each session.
 *
 * @param before sessions before the rework, at least 1
 * @param after sessions after it, at least 1
 * @param controls bows left as they were, shot in each session
 * @param arrows different arrows, at least 1
 * @param shots with each arrow from each bow in a session, at least 1
 */
public record SessionDesign(int before, int after, int controls, int arrows, int shots) {

  /**
   * The standard deviation of the log speed after less that before: sqrt((1 / before + 1 / after)
   * (W^2 + o + d)), with o = s^2 / (arrows shots), and d what days leave after the controls, D2 c /
   * (D2 + c) of D2 = D^2 + u^2 and c = (W^2 + o) / controls, or D2 without any.
   *
   * @param day D, how much days differ for all bows alike
   * @param bowDay W, how much a bow differs from day to day by itself
   * @param shotSd s, of one shot; 0 gives the floor that no number of shots gets under
   * @param setUpU u, of a session's own set-up; all of them relative standard deviations
   */
  public double sd(double day, double bowDay, double shotSd, double setUpU) {
    double own = bowDay * bowDay + shotSd * shotSd / ((double) arrows * shots);
    double days = day * day + setUpU * setUpU;
    double control = own / controls;
    double left = controls == 0 || days == 0 ? days : days * control / (days + control);
    return Math.sqrt((1.0 / before + 1.0 / after) * (own + left));
  }

  /** The same with another number of sessions after the rework. */
  SessionDesign withAfter(int sessions) {
    return new SessionDesign(before, sessions, controls, arrows, shots);
  }

  /** How many shots that takes in all. */
  public int total() {
    return (before + after) * (controls + 1) * arrows * shots;
  }
}
