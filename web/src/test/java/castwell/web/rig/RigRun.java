package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What the firmware said to a script, beside what truly happened. */
final class RigRun {
  private static final int CYCLES_PER_TICK = 8;

  /** From the pin to reading the timer, as the board tells of itself: 500 ns. */
  private static final double LATENCY_TICKS = 0.5 * 2;

  private final Path recording;
  private final List<Heard> heard;
  private final List<Injected> injected;
  private final Map<String, Long> measures;

  /** An edge of the script: the cycle at which its pin changed. */
  record Injected(long cycle, char gate, char kind) {}

  /** An edge as the board told it. */
  record Told(long number, char gate, char kind, long ticks, long late) {}

  private RigRun(
      Path recording, List<Heard> heard, List<Injected> injected, Map<String, Long> measures) {
    this.recording = recording;
    this.heard = heard;
    this.injected = injected;
    this.measures = measures;
  }

  static RigRun of(Script script, Path folder, String... options) {
    try {
      Path work = Files.createTempDirectory(folder, "rig");
      Path out = work.resolve("heard.rec");
      Path truth = work.resolve("truth");
      Path measured = work.resolve("measures");
      List<String> command = new ArrayList<>();
      command.add(Firmware.rig().toString());
      command.add(Firmware.elf().toString());
      command.add(script.writeTo(work.resolve("script")).toString());
      command.addAll(List.of("--out", out.toString(), "--truth", truth.toString()));
      command.addAll(List.of("--measures", measured.toString()));
      command.addAll(Arrays.asList(options));
      assertThat(Firmware.run(command.toArray(String[]::new))).isEmpty();
      return new RigRun(
          out,
          Files.readAllLines(out).stream()
              .filter(line -> !line.startsWith("#"))
              .map(Heard::of)
              .toList(),
          Files.readAllLines(truth).stream().map(RigRun::injected).toList(),
          measures(Files.readAllLines(measured)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Injected injected(String line) {
    String[] words = line.split(" ");
    return new Injected(Long.parseLong(words[0]), words[1].charAt(0), words[2].charAt(0));
  }

  private static Map<String, Long> measures(List<String> lines) {
    Map<String, Long> all = new TreeMap<>();
    lines.forEach(line -> all.put(line.split(" ")[0], Long.parseLong(line.split(" ")[1])));
    return all;
  }

  Path recording() {
    return recording;
  }

  List<Heard> heard() {
    return heard;
  }

  Stream<Heard> heard(char type) {
    return heard.stream().filter(line -> line.type() == type);
  }

  Heard last(char type) {
    return heard(type).reduce((first, second) -> second).orElseThrow();
  }

  List<Injected> injected() {
    return injected;
  }

  long measure(String name) {
    return measures.get(name);
  }

  List<Told> told() {
    return heard('E')
        .map(
            line ->
                new Told(
                    line.number(3),
                    line.text(4).charAt(0),
                    line.text(5).charAt(0),
                    line.number(6),
                    line.number(7)))
        .toList();
  }

  /** The same without what was said again; that must be the same but for the line. */
  RigRun onceEach() {
    Map<Long, Heard> edges = new TreeMap<>();
    for (Heard line : heard) {
      if (line.type() == 'E') {
        Heard before = edges.putIfAbsent(line.number(3), line);
        if (before != null) {
          assertThat(line.fields().subList(2, 8)).isEqualTo(before.fields().subList(2, 8));
        }
      }
    }
    return new RigRun(recording, List.copyOf(edges.values()), injected, measures);
  }

  /** By how many ticks a stamp is later than it should be; wrapped as the counter is. */
  double lateTicks(Injected truth, Told told) {
    double trueTicks = (double) (truth.cycle - measure("first-tick-cycle")) / CYCLES_PER_TICK;
    double late = told.ticks - trueTicks - LATENCY_TICKS;
    double wrap = 4294967296.0;
    return late - Math.rint(late / wrap) * wrap;
  }

  /** All edges were told, numbered and in order, none merged or dropped. */
  void everyEdgeIsTold() {
    List<Told> told = told();
    assertThat(told).hasSameSizeAs(injected);
    for (int i = 0; i < told.size(); i++) {
      assertThat(told.get(i).number()).isEqualTo(i + 1);
    }
    for (char gate : new char[] {'A', 'B'}) {
      assertThat(ofGate(told, gate).stream().map(Told::kind).toList())
          .isEqualTo(trueOfGate(gate).stream().map(Injected::kind).toList());
    }
  }

  /** No stamp is later than its own word of it, and one tick, nor earlier than a tick. */
  void noStampIsLaterThanItSays() {
    for (int gate = 0; gate < 2; gate++) {
      List<Told> told = ofGate(told(), "AB".charAt(gate));
      List<Injected> truth = trueOfGate("AB".charAt(gate));
      for (int i = 0; i < truth.size(); i++) {
        assertThat(lateTicks(truth.get(i), told.get(i)))
            .as("%s, said %s", truth.get(i), told.get(i))
            .isBetween(-1.0, told.get(i).late() + 1.0);
      }
    }
  }

  /** From each edge to the next, within two ticks and what the stamps say of themselves. */
  void intervalsAreRight() {
    List<Told> told = told();
    for (int i = 1; i < told.size(); i++) {
      long ticks = told.get(i).ticks - told.get(i - 1).ticks & 0xFFFF_FFFFL;
      double truth = (double) (injected.get(i).cycle - injected.get(i - 1).cycle) / CYCLES_PER_TICK;
      assertThat(ticks)
          .as("%s, %s", told.get(i - 1), told.get(i))
          .isBetween((long) truth - 2 - told.get(i - 1).late, (long) truth + 2 + told.get(i).late);
    }
  }

  double meanLateTicks() {
    List<Told> told = told();
    return IntStream.range(0, told.size())
        .mapToDouble(i -> lateTicks(injected.get(i), told.get(i)))
        .average()
        .orElseThrow();
  }

  static List<Told> ofGate(List<Told> told, char gate) {
    return told.stream().filter(edge -> edge.gate == gate).toList();
  }

  List<Injected> trueOfGate(char gate) {
    return injected.stream().filter(edge -> edge.gate == gate).toList();
  }

  /** Lines are numbered without a gap. */
  void linesAreWhole() {
    for (int i = 1; i < heard.size(); i++) {
      long before = heard.get(i - 1).number(1);
      assertThat(heard.get(i).number(1)).isEqualTo((before + 1) % 65_536);
    }
  }
}
