package castwell.analysis.reading;

/**
 * The limits within which a passage can be an arrow's. The defaults are common practice, no source.
 *
 * @param slowestMps an arrow's least speed, at least 0
 * @param fastestMps an arrow's greatest speed
 * @param shortestM an arrow's least length, at least 0
 * @param longestM an arrow's greatest length
 * @param lengthToleranceM how far a measured length may be from the tagged arrow's, beyond twice
 *     its standard uncertainty
 * @param flutterM the stretch before an arrow's tail in which fletching makes more edges; of
 *     another object, to each side of where its tail was seen
 * @param flutterEdges the most edges at one gate besides an object's ends, where no arrow explains
 *     them
 * @param agreementSigmas how many standard uncertainties of their difference the speeds from front
 *     and tail of such an object may be apart
 */
public record Limits(
    double slowestMps,
    double fastestMps,
    double shortestM,
    double longestM,
    double lengthToleranceM,
    double flutterM,
    int flutterEdges,
    double agreementSigmas) {

  /**
   * @throws IllegalArgumentException when a range is empty or an allowance below 0
   */
  public Limits {
    range("speed", slowestMps, fastestMps, "m/s");
    range("length", shortestM, longestM, "m");
    allowance("the tolerance of the length", lengthToleranceM);
    allowance("the stretch that may flutter", flutterM);
    allowance("the number of flutter edges", flutterEdges);
    allowance("how far front and tail may differ", agreementSigmas);
  }

  public static Limits defaults() {
    return new Limits(20, 130, 0.5, 1.0, 0.04, 0.2, 16, 4);
  }

  private static void range(String what, double least, double most, String unit) {
    if (!(least >= 0 && least < most)) {
      throw new IllegalArgumentException(
          "an arrow's %s goes from at least 0 up to more than that, not from %s to %s %s"
              .formatted(what, least, most, unit));
    }
  }

  private static void allowance(String what, double value) {
    if (!(value >= 0)) {
      throw new IllegalArgumentException(what + " is at least 0, not " + value);
    }
  }
}
