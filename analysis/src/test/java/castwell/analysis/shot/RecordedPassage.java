package castwell.analysis.shot;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * A passage as a board sent it, with the truth about it that was written down apart: the speed and
 * length of what went through, or why it must not count.
 *
 * @param hz the true tick rate
 * @param code of the reason expected first; empty when it must count
 */
public record RecordedPassage(
    String name,
    double hz,
    Passage passage,
    OptionalDouble speedFps,
    OptionalDouble lengthMm,
    Optional<String> code) {

  /** All of them; the gates stood 609.6 mm apart. */
  public static List<RecordedPassage> all() {
    String path = "/castwell/analysis/recorded-passages.csv";
    try (InputStream in = RecordedPassage.class.getResourceAsStream(path)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().skip(1).map(RecordedPassage::parse).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static RecordedPassage parse(String row) {
    String[] cells = row.split(",", -1);
    List<Integer> lost =
        Stream.of(cells[4].split(" ")).filter(s -> !s.isEmpty()).map(Integer::valueOf).toList();
    Passage passage = new Passage(Passages.edges(cells[3]), lost, Boolean.parseBoolean(cells[5]));
    return new RecordedPassage(
        cells[0] + " boot " + cells[1] + " edge " + passage.firstEdge() + ", " + cells[9],
        Double.parseDouble(cells[2]),
        passage,
        number(cells[6]),
        number(cells[7]),
        Optional.of(cells[8]).filter(s -> !s.isEmpty()));
  }

  private static OptionalDouble number(String cell) {
    return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
  }

  @Override
  public String toString() {
    return name;
  }
}
