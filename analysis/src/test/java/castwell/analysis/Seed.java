package castwell.analysis;

/**
 * Where a random test begins: always at the same place, lest it falls on one day and not on
 * another, or with {@code -Dcastwell.seed=N} wherever one likes.
 */
public final class Seed {
  private static final long USUAL = 20260501;

  private Seed() {}

  /** Tells it too, so that a failure can be played again. */
  public static long of(Class<?> test) {
    long seed = Long.getLong("castwell.seed", USUAL);
    System.out.println(test.getName() + " begins at castwell.seed=" + seed);
    return seed;
  }
}
