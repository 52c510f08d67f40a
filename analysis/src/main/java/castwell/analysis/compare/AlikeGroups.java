package castwell.analysis.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The largest sets of bows within which no two are told apart, by insert and absorb (Piepho, J.
 * Comput. Graph. Stat. 13 (2004) 456): at first all bows are one group; each pair that differs
 * splits every group that holds both; a group within another is dropped.
 */
final class AlikeGroups {
  private AlikeGroups() {}

  /** Two bows that differ. */
  record Apart(String one, String other) {}

  /**
   * The groups, by the first bow of each; a bow may be in several.
   *
   * @param bows in their order, which each group keeps
   */
  static List<List<String>> of(List<String> bows, List<Apart> apart) {
    List<Set<String>> groups = new ArrayList<>();
    groups.add(new LinkedHashSet<>(bows));
    apart.forEach(pair -> split(groups, pair));
    return groups.stream()
        .filter(group -> !group.isEmpty())
        .map(group -> bows.stream().filter(group::contains).toList())
        .sorted(Comparator.comparingInt(group -> bows.indexOf(group.get(0))))
        .toList();
  }

  private static void split(List<Set<String>> groups, Apart pair) {
    for (Set<String> group : List.copyOf(groups)) {
      if (group.contains(pair.one()) && group.contains(pair.other())) {
        groups.remove(group);
        absorb(groups, without(group, pair.one()));
        absorb(groups, without(group, pair.other()));
      }
    }
  }

  private static void absorb(List<Set<String>> groups, Set<String> group) {
    if (groups.stream().noneMatch(other -> other.containsAll(group))) {
      groups.removeIf(group::containsAll);
      groups.add(group);
    }
  }

  private static Set<String> without(Set<String> group, String bow) {
    Set<String> rest = new LinkedHashSet<>(group);
    rest.remove(bow);
    return rest;
  }
}
