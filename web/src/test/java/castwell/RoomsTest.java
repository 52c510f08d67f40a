package castwell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * A room is a package with one trade: small enough to look around in, and it says what it is for.
 */
class RoomsTest {
  private static final int MOST_FILES = 20;
  private static final String DOOR = "package-info.java";

  /** One stays whole so that no database handle leaves it; the others are one like thing a file. */
  private static final Set<String> MAY_BE_LARGER =
      Set.of("analysis/verdict", "capture/store", "capture/health", "web/cli", "web/workbench");

  private static Map<String, List<String>> rooms() throws IOException {
    Map<String, List<String>> rooms = new TreeMap<>();
    for (String module : List.of("analysis", "capture", "web")) {
      Path sources = Path.of("..", module, "src", "main", "java", "castwell");
      try (Stream<Path> files = Files.walk(sources)) {
        rooms.putAll(
            files
                .filter(file -> file.toString().endsWith(".java"))
                .collect(
                    Collectors.groupingBy(
                        file -> sources.relativize(file.getParent()).toString().replace('\\', '/'),
                        Collectors.mapping(
                            file -> file.getFileName().toString(), Collectors.toList()))));
      }
    }
    return rooms;
  }

  @Test
  void everyRoomSaysWhatIsDoneThere() throws IOException {
    assertThat(rooms()).allSatisfy((room, files) -> assertThat(files).as(room).contains(DOOR));
  }

  @Test
  void noRoomIsAWarehouse() throws IOException {
    Map<String, List<String>> rooms = rooms();
    assertThat(rooms.keySet()).containsAll(MAY_BE_LARGER);
    rooms.keySet().removeAll(MAY_BE_LARGER);
    assertThat(rooms)
        .hasSizeGreaterThan(50)
        .allSatisfy(
            (room, files) ->
                assertThat(files.stream().filter(file -> !file.equals(DOOR)))
                    .as(room)
                    .hasSizeLessThanOrEqualTo(MOST_FILES));
  }
}
