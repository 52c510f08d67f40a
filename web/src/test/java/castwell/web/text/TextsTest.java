package castwell.web.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.analysis.bow.Advice;
import castwell.analysis.compare.Conditions;
import castwell.analysis.compare.Rework;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measure;
import castwell.capture.view.station.BudgetSource;
import castwell.web.report.reach.Reachability;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class TextsTest {
  private static final Texts ENGLISH = Texts.english();
  private static final Pattern SAID = Pattern.compile("\\bsay\\(\\s*\"([a-z0-9_.]+)\"\\s*[,)]");

  /** A phrase's key, wherever it is handed over to be said. */
  private static final Pattern TOLD =
      Pattern.compile("\"((?:verdict|refused|health|link)\\.[a-z0-9_]*[a-z0-9])\"");

  private static final List<String> MODULES = List.of("../analysis", "../capture", ".");
  private static final Pattern QUOTED = Pattern.compile("\"([a-z0-9_.]+)\"");

  /** Put together from a part of a page's, an enum's or a chart's own name. */
  private static final Pattern COMPOSED =
      Pattern.compile(
          String.join(
              "|",
              "menu\\..*",
              "report\\.speeds\\.at_(bow|gates|mixed)",
              "budget\\.(own|common|all(-own|-common)?|[a-z]+(-[a-z]+)?)",
              "sheet\\.no_(bow|arrow)(_but)?",
              "calibration\\.(agrees|differs|cant_tell)",
              "bow\\.(momentum|energy|share)_(title|told|none)",
              "report\\.days\\.(of_session(_slower)?|like_usual)",
              "refused\\.word_(start|skip|repeat|back|pause|resume|end)",
              "health\\.oscillator_(crystal|resonator)",
              "report\\.advice\\..*",
              "report\\.reach\\..*",
              "report\\.rework\\.(moved|gates|temperature|moisture|string)_.*"));

  private static final List<Advice> ADVICE =
      List.of(
          new Advice.OneMass(0.03, 0.05),
          new Advice.TwoMasses(0.04),
          new Advice.TooCloseTogether(0.002, 0.02, 0.04, 0.001),
          new Advice.TooFewRepeats(0.002, 7, 0.001),
          new Advice.NoRepeats(),
          new Advice.NotToldFromZero(0.001, -0.001, 0.003),
          new Advice.VirtualMassBelowZero(0.02, 0.04),
          new Advice.CurveMisses(0.01),
          new Advice.HeavierNotSlower(),
          new Advice.TooFewShots(0),
          new Advice.TooFewShots(2));

  private static Set<String> in(Pattern pattern, List<String> modules) throws IOException {
    Set<String> found = new TreeSet<>();
    for (String module : modules) {
      try (Stream<Path> files = Files.walk(Path.of(module, "src/main"))) {
        found.addAll(
            in(files.filter(f -> f.toString().matches(".*\\.(java|jte)")).toList(), pattern));
      }
    }
    return found;
  }

  /** What a pattern's first group is, wherever it is found in these files. */
  static Set<String> in(List<Path> files, Pattern pattern) throws IOException {
    Set<String> found = new TreeSet<>();
    for (Path file : files) {
      Matcher matcher = pattern.matcher(Files.readString(file));
      while (matcher.find()) {
        found.add(matcher.group(1));
      }
    }
    return found;
  }

  @Test
  void whateverIsSaidIsThere() throws IOException {
    Set<String> said = in(SAID, List.of("."));
    said.addAll(in(TOLD, MODULES));
    assertThat(said).hasSizeGreaterThan(100);
    assertThat(ENGLISH.all().keySet()).containsAll(said);
  }

  @Test
  void whateverIsThereIsSaid() throws IOException {
    Set<String> keys = new TreeSet<>(ENGLISH.all().keySet());
    keys.removeAll(in(QUOTED, MODULES));
    measures().forEach(measure -> keys.removeAll(Set.of(measure.label(), measure.refusal())));
    keys.removeAll(ENGLISH.all("live.").keySet()); // of the scripts: see ScriptWordsTest
    keys.removeIf(key -> COMPOSED.matcher(key).matches());
    assertThat(keys).isEmpty();
  }

  @Test
  void argumentsStandInTheirPlacesAndCountWords() {
    assertThat(ENGLISH.say("sessions.shots", 1, 2)).isEqualTo("1 shot counts, 2 set aside");
    assertThat(ENGLISH.say("sessions.shots", 5, 0)).isEqualTo("5 shots count, 0 set aside");
    assertThat(ENGLISH.say("rack.added", "$1 {0} \\")).isEqualTo("$1 {0} \\ is on the rack.");
  }

  /** Every advice, outcome and difference has its words. */
  @Test
  void whatIsPutTogetherIsThereToo() {
    for (Rework.Answer answer : Rework.Answer.values()) {
      assertThat(ENGLISH.all()).containsKey("report.rework.moved_" + word(answer));
    }
    assertThat(measures())
        .allSatisfy(
            measure -> assertThat(ENGLISH.all()).containsKeys(measure.label(), measure.refusal()));
    for (Conditions.What what : Conditions.What.values()) {
      for (String way : List.of("more", "less", "unknown")) {
        assertThat(ENGLISH.all()).containsKey("report.rework." + word(what) + "_" + way);
      }
    }
    for (BudgetSource source : BudgetSource.values()) {
      assertThat(ENGLISH.all()).containsKey("budget." + source.word());
    }
    for (Reachability verdict : Reachability.values()) {
      assertThat(ENGLISH.all()).containsKey("report.reach." + word(verdict));
    }
    for (Advice advice : ADVICE) {
      String words = ENGLISH.say("report.advice." + advice.code(), advice.figures().toArray());
      assertThat(words).doesNotContain("{").endsWith(".");
    }
    assertThat(ADVICE.stream().map(Object::getClass).distinct())
        .hasSameSizeAs(Advice.class.getPermittedSubclasses());
  }

  private static List<Measure> measures() {
    return Stream.<Measure[]>of(BowMeasure.values(), ArrowMeasure.values())
        .flatMap(Stream::of)
        .toList();
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }

  @Test
  void aKeyThatIsNotThereIsABug() {
    assertThatThrownBy(() -> ENGLISH.say("no.such")).hasMessageContaining("no.such");
  }
}
