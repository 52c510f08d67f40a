package castwell.analysis.reading;

import castwell.analysis.shot.Passage;
import castwell.analysis.shot.Passages;
import castwell.analysis.speed.Flight;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** A cluster of edges with what an independent program in Python read in it. */
record ReadCluster(
    String name,
    Passage passage,
    Knowledge knowledge,
    StoryTold.Kind best,
    double cost,
    Optional<StoryTold.Kind> runnerUp,
    double runnerUpCost,
    List<Part> parts,
    List<Arrow> arrows) {

  /** The stretch that flutters, as that program had it. */
  private static final Limits LIMITS = new Limits(20, 130, 0.5, 1.0, 0.04, 0.15, 16, 4);

  /** The numbers of an arrow, and of its edges "-" where there is none. */
  record Arrow(List<Double> numbers, List<String> edges) {
    private static final int NUMBERS = 7;

    static Arrow parse(String text) {
      List<String> words = List.of(text.split(" "));
      return new Arrow(
          words.stream().limit(NUMBERS).map(Double::valueOf).toList(),
          words.subList(NUMBERS, words.size()));
    }
  }

  static List<ReadCluster> all() {
    String path = "/castwell/analysis/read-clusters.tsv";
    try (InputStream in = ReadCluster.class.getResourceAsStream(path)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().skip(1).map(ReadCluster::parse).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static ReadCluster parse(String row) {
    String[] cells = row.split("\t", -1);
    List<Integer> lost = words(cells[2]).map(Integer::valueOf).toList();
    List<Integer> recent = words(cells[3]).map(Integer::valueOf).toList();
    Knowledge knowledge =
        new Knowledge(
            Flight.CALIBRATION.withTriggerScatter(Double.parseDouble(cells[7])),
            LIMITS,
            Double.parseDouble(cells[6]),
            known(cells[4]),
            known(cells[5]),
            recent.get(0),
            recent.get(1));
    return new ReadCluster(
        cells[0],
        new Passage(Passages.edges(cells[1]), lost, false),
        knowledge,
        StoryTold.Kind.valueOf(cells[8]),
        Double.parseDouble(cells[9]),
        words(cells[10]).map(StoryTold.Kind::valueOf).findFirst(),
        words(cells[11]).mapToDouble(Double::parseDouble).findFirst().orElse(Double.NaN),
        words(cells[12]).map(Part::valueOf).toList(),
        Stream.of(cells[13].split("; ")).filter(s -> !s.isEmpty()).map(Arrow::parse).toList());
  }

  private static Stream<String> words(String cell) {
    return Stream.of(cell.split(" ")).filter(word -> !word.isEmpty());
  }

  private static Optional<Known> known(String cell) {
    List<Double> numbers = words(cell).map(Double::valueOf).toList();
    return numbers.isEmpty()
        ? Optional.empty()
        : Optional.of(new Known(numbers.get(0), numbers.get(1)));
  }

  @Override
  public String toString() {
    return name;
  }
}
