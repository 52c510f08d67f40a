package castwell.capture.rehearsal;

/**
 * The settings of a rehearsal.
 *
 * @param seed the seed of all chance; the same seed shoots the same arrows
 * @param device the pretended board's name, 1 to 16 letters, digits, dots or dashes
 * @param boot the pretended board's count of starts, 0 to 65535: another one for each rehearsal
 *     that shares a data folder
 * @param secondsBetweenArrows the average time between two arrows of an end, above 0
 * @param secondsToFetch the average time between two ends, above 0
 * @param speedSpread the relative standard deviation of the speed
 * @param mishapShare the share of arrows that have a mishap, 0 to 1
 */
public record RehearsalSettings(
    long seed,
    String device,
    int boot,
    double secondsBetweenArrows,
    double secondsToFetch,
    double speedSpread,
    double mishapShare) {
  public static final double GATE_SPACING_M = 0.6096;
  public static final double GATE_SPACING_UNCERTAINTY_M = 0.0003;
  public static final double GATES_FROM_BOW_M = 2.0;

  public RehearsalSettings {
    if (!(secondsBetweenArrows > 0) || !(secondsToFetch > 0)) {
      throw new IllegalArgumentException("The seconds between arrows must be above 0.");
    }
  }

  public static RehearsalSettings of(long seed, int boot) {
    return new RehearsalSettings(seed, "rehearsal-1", boot & 0xFFFF, 7, 20, 0.006, 0.2);
  }
}
