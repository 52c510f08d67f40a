package castwell.analysis.compare;

import castwell.analysis.statistic.RankGroups;
import castwell.analysis.statistic.Spearman;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Which measures go with cast over a rack of bows. That tells no cause, since bows differ in many
 * at once.
 */
public final class Features {
  private static final int FEWEST = 4;

  private Features() {}

  /** A bow's measures beside its cast; each in any unit, as long as it is the same for all bows. */
  public record Bow(
      double cast,
      OptionalDouble length,
      OptionalDouble stringFollow,
      OptionalDouble tipWidth,
      OptionalDouble mass,
      Optional<String> wood) {}

  /**
   * How one measure goes with cast.
   *
   * @param n the number of bows that have the measure
   * @param rho the rank correlation with cast; NaN for the wood, which has no order
   * @param exact whether p was found by counting all orders
   */
  public record Finding(String feature, int n, double rho, double pValue, boolean exact) {}

  /** The findings for those measures that at least four bows have. */
  public static List<Finding> of(List<Bow> bows) {
    List<Finding> findings = new ArrayList<>();
    measure("length", bows, Bow::length).ifPresent(findings::add);
    measure("string follow", bows, Bow::stringFollow).ifPresent(findings::add);
    measure("tip width", bows, Bow::tipWidth).ifPresent(findings::add);
    measure("mass", bows, Bow::mass).ifPresent(findings::add);
    wood(bows).ifPresent(findings::add);
    return findings;
  }

  private static Optional<Finding> measure(
      String name, List<Bow> bows, Function<Bow, OptionalDouble> value) {
    List<Bow> having = bows.stream().filter(bow -> value.apply(bow).isPresent()).toList();
    if (having.size() < FEWEST) {
      return Optional.empty();
    }
    Spearman test =
        Spearman.test(
            having.stream().mapToDouble(bow -> value.apply(bow).orElseThrow()).toArray(),
            having.stream().mapToDouble(Bow::cast).toArray());
    return Optional.of(new Finding(name, having.size(), test.rho(), test.pValue(), test.exact()));
  }

  private static Optional<Finding> wood(List<Bow> bows) {
    List<Bow> having = bows.stream().filter(bow -> bow.wood().isPresent()).toList();
    List<String> woods = having.stream().map(bow -> bow.wood().orElseThrow()).distinct().toList();
    if (having.size() < FEWEST || woods.size() < 2) {
      return Optional.empty();
    }
    RankGroups test =
        RankGroups.test(
            having.stream().mapToDouble(Bow::cast).toArray(),
            having.stream().mapToInt(bow -> woods.indexOf(bow.wood().orElseThrow())).toArray());
    return Optional.of(new Finding("wood", having.size(), Double.NaN, test.pValue(), test.exact()));
  }
}
