package castwell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What DEVELOPERS.md points at under "Where is ...?" is there. */
class MapTest {
  private static final Path MAP = Path.of("..", "DEVELOPERS.md");
  private static final int MOST_LINES = 200;
  private static final Set<String> MODULES = Set.of("analysis", "capture", "web");
  private static final Pattern QUOTED = Pattern.compile("`([^`]+)`");

  /** A room, or a class in one. */
  private static final Pattern PLACE = Pattern.compile("([a-z]+/)+([A-Z]\\w*)?");

  @Test
  void everyRoomAndClassThatItNamesExists() throws IOException {
    List<Path> named = new ArrayList<>();
    for (String row : Files.readAllLines(MAP)) {
      if (row.startsWith("| ")) {
        named.addAll(places(row));
      }
    }
    assertThat(named).hasSizeGreaterThan(40).allSatisfy(place -> assertThat(place).exists());
  }

  private static List<Path> places(String row) {
    List<Path> places = new ArrayList<>();
    String module = "";
    Matcher quoted = QUOTED.matcher(row);
    while (quoted.find()) {
      String word = quoted.group(1);
      if (MODULES.contains(word)) {
        module = word;
      } else if (!module.isEmpty() && PLACE.matcher(word).matches()) {
        places.add(place(module, word));
      }
    }
    return places;
  }

  private static Path place(String module, String word) {
    Path main = Path.of("..", module, "src", "main", "java", "castwell", module);
    Path test = Path.of("..", module, "src", "test", "java", "castwell", module);
    String file = word.endsWith("/") ? word : word + ".java";
    if (Files.exists(Path.of("..", file))) {
      return Path.of("..", file);
    }
    return Files.exists(main.resolve(file)) ? main.resolve(file) : test.resolve(file);
  }

  @Test
  void itCanBeReadInOneGo() throws IOException {
    assertThat(Files.readAllLines(MAP)).hasSizeLessThanOrEqualTo(MOST_LINES);
  }
}
