package castwell.capture.store;

import castwell.analysis.shot.Passage;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * The numbers of a passage's edges, arrived or lost.
 *
 * @param own its own between the first and the last, where others are among them; else empty, and
 *     all are its own
 */
public record EdgeNumbers(int first, int last, Set<Integer> own) {
  public EdgeNumbers {
    own = Set.copyOf(own);
  }

  public static EdgeNumbers of(Passage passage) {
    Set<Integer> numbers = passage.numbers();
    int first = passage.firstEdge();
    int last = passage.lastEdge();
    boolean all = numbers.size() == last - first + 1;
    return new EdgeNumbers(first, last, all ? Set.of() : numbers);
  }

  public boolean has(int number) {
    return number >= first && number <= last && (own.isEmpty() || own.contains(number));
  }

  /** As the store keeps them: a JSON array; empty where all are its own. */
  Optional<String> written() {
    return own.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new TreeSet<>(own)
                .stream().map(String::valueOf).collect(Collectors.joining(",", "[", "]")));
  }

  static EdgeNumbers read(ResultSet row) throws SQLException {
    String written = row.getString("own_edges");
    Set<Integer> own =
        written == null
            ? Set.of()
            : Arrays.stream(written.substring(1, written.length() - 1).split(","))
                .map(Integer::valueOf)
                .collect(Collectors.toSet());
    return new EdgeNumbers(row.getInt("first_edge"), row.getInt("last_edge"), own);
  }
}
