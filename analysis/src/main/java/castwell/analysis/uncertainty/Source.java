package castwell.analysis.uncertainty;

/**
 * Something that makes results uncertain. Two quantities that name an equal source are correlated
 * through it, so a difference of two readings of one set-up loses what both share.
 *
 * @param degreesOfFreedom of the standard uncertainty's own estimate, positive, infinite where it
 *     is taken as exactly known
 * @param scatter names that estimate: sources whose uncertainty rests on one and the same are right
 *     or wrong together, and share its degrees of freedom
 */
public record Source(String name, Kind kind, double degreesOfFreedom, String scatter) {

  /** One with an estimate of its own. */
  public Source(String name, Kind kind, double degreesOfFreedom) {
    this(name, kind, degreesOfFreedom, name);
  }

  public static Source own(String name) {
    return new Source(name, Kind.OWN, Double.POSITIVE_INFINITY);
  }

  public static Source common(String name) {
    return new Source(name, Kind.COMMON, Double.POSITIVE_INFINITY);
  }
}
