package castwell.capture.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.verdict.Judge;
import castwell.capture.derive.Renewal;
import castwell.capture.derive.Verification;
import castwell.capture.store.Shot;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Figures follow from the edges, whether they were read once, followed the rate or were renewed.
 */
class RenewalTest {
  private static final Instant NOW = Instant.parse("2026-06-01T12:00:00Z");

  @TempDir Path folder;

  private static Path file(String name) throws Exception {
    return Path.of(RenewalTest.class.getResource("/recordings/" + name + ".rec").toURI());
  }

  private static void assertVerified(RangeBench bench) {
    Verification.Outcome outcome =
        new Verification(RangeBench.SETTINGS).verify(bench.store(), (done, all) -> {});
    assertThat(outcome.faults()).isEmpty();
    assertThat(outcome.byOlderRules()).isZero();
    assertThat(outcome.figures()).isPositive();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "resonator-clock",
        "every-trouble-once",
        "edges/two-arrows-and-what-comes-back",
        "edges/one-edge-spoilt"
      })
  void figuresThatFollowedTheRateAreThoseDerivedAnew(String name) throws Exception {
    try (RangeBench bench = RangeBench.in(folder)) {
      bench.replay(file(name));
      assertVerified(bench);
    }
  }

  @Test
  void shotsOfAnEarlierProgramAreReadAnewOnce() throws Exception {
    String name = "resonator-clock";
    try (RangeBench bench = RangeBench.in(folder)) {
      bench.replay(file(name));
      List<Shot> read = bench.shots(name);
      asAnEarlierProgramLeftThem();
      assertThat(bench.shots(name)).noneMatch(Shot::counts);

      Renewal renewal = new Renewal(RangeBench.SETTINGS);
      assertThat(renewal.renew(bench.store(), NOW, (done, all) -> {})).isEqualTo(read.size());
      assertThat(renewal.renew(bench.store(), NOW, (done, all) -> {})).isZero();
      assertThat(bench.shots(name)).isEqualTo(read);
      assertThat(bench.shots(name))
          .allMatch(shot -> shot.figure().rulesVersion() == Judge.RULES_VERSION);
      assertVerified(bench);
    }
  }

  private void asAnEarlierProgramLeftThem() throws Exception {
    try (Connection database =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("castwell.db"));
        Statement statement = database.createStatement()) {
      statement.execute(
          "UPDATE figure SET rules_version = 1, clean = 0, verdict = 'too-many-edges', speed_mps = 1");
    }
  }
}
