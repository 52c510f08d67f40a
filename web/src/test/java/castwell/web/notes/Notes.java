package castwell.web.notes;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The makers' notes, as written. */
final class Notes {
  static final Path FOLDER = Path.of("..", "hardware-notes");
  private static final Pattern FIGURE = Pattern.compile("-?\\d+(\\.\\d+)?");

  private Notes() {}

  static String text(String name) {
    return text(FOLDER.resolve(name));
  }

  /** Without its line breaks, so that a sentence is found however it is broken. */
  static String prose(String name) {
    return text(name).replaceAll("\\s+", " ");
  }

  static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Files beside the notes and in their pictures, not those of the firmware and its rig. */
  static List<Path> files(String ending) {
    try (Stream<Path> own = Files.list(FOLDER);
        Stream<Path> pictures = Files.list(FOLDER.resolve("pictures"))) {
      return Stream.concat(own, pictures)
          .filter(file -> file.toString().endsWith(ending))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The rows below the heading with that first cell, in all tables so headed, by first cell. */
  static Map<String, List<String>> table(String name, String firstHeading) {
    List<String> lines = text(name).lines().toList();
    Map<String, List<String>> rows = new LinkedHashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith("| " + firstHeading + " |")) {
        lines.stream()
            .skip(i + 2L)
            .takeWhile(line -> line.startsWith("|"))
            .map(Notes::cells)
            .forEach(
                cells ->
                    assertThat(rows.put(cells.get(0), cells.subList(1, cells.size())))
                        .as("another row of %s named %s", name, cells.get(0))
                        .isNull());
      }
    }
    assertThat(rows).as("tables in %s headed %s", name, firstHeading).isNotEmpty();
    return rows;
  }

  private static List<String> cells(String row) {
    return Arrays.stream(row.substring(1, row.lastIndexOf('|')).split("\\|", -1))
        .map(String::strip)
        .toList();
  }

  /** The figure a cell begins with is the true one, rounded to the digits that it has. */
  static void says(String cell, double truth) {
    Matcher figure = FIGURE.matcher(cell.replace("−", "-"));
    assertThat(figure.lookingAt()).as("a figure at the start of: %s", cell).isTrue();
    BigDecimal written = new BigDecimal(figure.group());
    assertThat(written)
        .as(cell)
        .isEqualTo(new BigDecimal(truth).setScale(written.scale(), RoundingMode.HALF_UP));
  }
}
