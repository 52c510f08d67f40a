package castwell.analysis.reading;

import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * A way in which a passage can be disturbed, with what is true of it.
 *
 * @param mimics whether it looks like an arrow so well that nobody can tell
 */
record Disturbance(String name, boolean mimics, Consumer<Scene> making) {

  static Disturbance of(String name, Consumer<Scene> making) {
    return new Disturbance(name, false, making);
  }

  static List<Disturbance> all() {
    return Stream.of(DisturbedArrows.ALL, ManyDisturbances.ALL, SpoiltArrows.ALL, NoArrows.ALL)
        .flatMap(List::stream)
        .toList();
  }
}
