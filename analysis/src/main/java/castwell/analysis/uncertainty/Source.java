package castwell.analysis.uncertainty;

/**
 * Something that makes results uncertain. Two quantities that name an equal source are correlated
 * through it, so a difference of two readings of one set-up loses what both share.
 *
 * @param degreesOfFreedom the degrees of freedom of the estimate of the standard uncertainty,
 *     positive; infinite where it is taken as exactly known
 * @param scatter the name of that estimate; sources that rest on one estimate are right or wrong
 *     together, and share its degrees of freedom
 */
public record Source(String name, Kind kind, double degreesOfFreedom, String scatter) {

  /** A source with an estimate of its own. */
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
