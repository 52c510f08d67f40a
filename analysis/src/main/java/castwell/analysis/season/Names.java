package castwell.analysis.season;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Numbers for names, from 0 on, in the order in which they first come. */
final class Names {
  private final Map<Object, Integer> numbers = new HashMap<>();
  private final List<Object> names = new ArrayList<>();

  int number(Object name) {
    Integer known = numbers.putIfAbsent(name, names.size());
    if (known == null) {
      names.add(name);
      return names.size() - 1;
    }
    return known;
  }

  /** -1 for a name that never came. */
  int find(Object name) {
    return numbers.getOrDefault(name, -1);
  }

  int size() {
    return names.size();
  }
}
