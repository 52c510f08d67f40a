package castwell.web.season;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import castwell.web.season.Tallies.Share;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Seasons whose truth is known, taken in from sheets, and what their reports say: how often 95 %
 * intervals hold the truth, and how often something is said that isn't so. With {@code
 * -Dcastwell.repeats=N} of more seasons, whose table is in {@code web/target/seasons.md} after
 * each.
 */
@Tag("slow")
class ShotsToSentencesTest {
  private static final int REPEATS = Integer.getInteger("castwell.repeats", 1);

  /** Of few seasons: as days are commonly told to be, since it hardly shows otherwise. */
  private static final double[] USUAL_DAYS = Shooting.DAYS[2];

  private static final Path TABLE = Path.of("target", "seasons.md");
  private static final double REACH_GR = 450;

  @TempDir Path folder;
  private final Tallies figures = new Tallies();
  private final Tallies changes = new Tallies();

  @Test
  void whatIsSaidIsSo() throws IOException {
    long seed = Seed.of(ShotsToSentencesTest.class);
    int n = 0;
    for (int i = 0; i < REPEATS; i++) {
      for (int sessions : Shooting.SESSIONS) {
        for (int controls : Shooting.CONTROLS) {
          Random random = new Random(seed + 7919L * n);
          double[] days = REPEATS == 1 ? USUAL_DAYS : Shooting.DAYS[(i + n) % Shooting.DAYS.length];
          n++;
          season(Shooting.any(sessions, controls, days, random), random);
        }
      }
      Files.writeString(TABLE, figures.table() + "\n" + changes.table());
    }
    System.out.println(Files.readString(TABLE));
    for (String held :
        List.of(Checked.CAST, Checked.ANY_CAST, "cast, today", "E", "K", "reach", "side by side")) {
      assertThat(all(figures, held).isBelow(0.93)).as(held).isFalse();
    }
    assertThat(all(figures, Checked.TODAY_AS_ANY).isBelow(0.93)).as("days matter").isTrue();
    assertThat(all(changes, CheckedRework.HOLDS).isBelow(0.93)).isFalse();
    assertThat(all(changes, CheckedRework.FALSE).isAbove(0.05)).isFalse();
    assertThat(all(changes, CheckedRework.ALONE).isAbove(0.05)).isFalse();
    assertThat(all(changes, CheckedRework.WRONG).isAbove(0.002)).isFalse();
    assertThat(all(changes, CheckedRework.SMALLER).isBelow(0.95)).isFalse();
    assertThat(figures.of("release: plucked", CheckedSessions.MISSED).isAbove(0.01)).isFalse();
    assertThat(figures.of("release: plucked", CheckedSessions.LOST).isAbove(0.001)).isFalse();
  }

  private static Share all(Tallies tallies, String column) {
    Share share = tallies.of(Checked.ALL, column);
    assertThat(share.all()).as(column).isPositive();
    return share;
  }

  private void season(Shooting how, Random random) throws IOException {
    TrueSeason truth = new TrueSeason(how, random);
    Path store = Files.createTempDirectory(folder, "season");
    Told told = Told.of(truth, store, truth.reworked().carriedFtlbf(REACH_GR), 0);
    Checked.add(truth, told, REACH_GR, figures, changes);
    delete(store);
  }

  /** Each at once, since very many wouldn't fit on the disk. */
  private static void delete(Path store) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(store)) {
      files = all.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path file : files) {
      Files.delete(file);
    }
  }
}
