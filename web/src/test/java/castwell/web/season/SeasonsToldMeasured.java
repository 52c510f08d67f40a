package castwell.web.season;

import castwell.analysis.Seed;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Writes what reports say of ten seasons to {@code web/target/seasons-told.txt}, for somebody who
 * doesn't know what is true, and what is true of them to {@code seasons-true.txt}.
 */
class SeasonsToldMeasured {
  private static final int SEASONS = 10;

  /** What bows are asked to reach. */
  private static final double ENERGY_FTLBF = 32;

  @TempDir Path folder;
  private final StringBuilder told = new StringBuilder();
  private final StringBuilder truth = new StringBuilder();

  @Test
  void tellsTenSeasons() throws IOException {
    Random random = new Random(Seed.of(SeasonsToldMeasured.class) + 17);
    for (int n = 1; n <= SEASONS; n++) {
      Shooting how =
          Shooting.any(
              Shooting.SESSIONS[random.nextInt(Shooting.SESSIONS.length)],
              random.nextInt(4),
              Shooting.DAYS[random.nextInt(Shooting.DAYS.length)],
              random);
      TrueSeason season = new TrueSeason(how, random);
      Path store = Files.createDirectory(folder.resolve("season-" + n));
      tell(n, Told.of(season, store, ENERGY_FTLBF, 0.5));
      tellTruth(n, season);
    }
    Files.writeString(Path.of("target", "seasons-told.txt"), told);
    Files.writeString(Path.of("target", "seasons-true.txt"), truth);
  }

  private void tell(int n, Told season) {
    told.append(n == 1 ? "" : "\n").append("## Season ").append(n).append('\n');
    tell("rework of Ash", season.rework().sentences());
    season.leftAlone().ifPresent(rework -> tell("rework of " + rework.bow(), rework.sentences()));
    tell("bow Ash", season.bow().sentences());
    tell("ranking", season.ranking().sentences());
    season.ranking().pairs().forEach(pair -> told.append("    ").append(pair).append('\n'));
    tell("reach " + ENERGY_FTLBF + " ft lbf", season.reach().sentences());
    season.reach().reach().forEach(row -> told.append("    ").append(row).append('\n'));
    season.sessions().forEach(session -> tell("session " + session.session(), session.sentences()));
  }

  private void tell(String what, List<String> sentences) {
    told.append("\n# ").append(what).append('\n');
    sentences.forEach(sentence -> told.append("  ").append(sentence).append('\n'));
  }

  private void tellTruth(int n, TrueSeason season) {
    truth.append("\n## Season ").append(n).append('\n').append(season.shooting()).append('\n');
    season.bows().forEach(bow -> tellTruth(bow));
    truth.append("after its rework:\n");
    tellTruth(season.reworked());
    for (String session : season.sessions()) {
      truth.append(session);
      truth.append(
          String.format(Locale.ROOT, ", display %+.2f %%:", 100 * season.displayError(session)));
      for (TrueBow bow : season.bows()) {
        double log = season.bowDay(bow.name(), session);
        truth.append(String.format(Locale.ROOT, " %s %+.2f %%", bow.name(), 100 * log));
      }
      truth.append('\n');
    }
    truth.append("plucked: ").append(season.shots().plucked()).append('\n');
  }

  private void tellTruth(TrueBow bow) {
    double massGr = 10 * bow.drawWeightLb();
    double reached = bow.virtualMassGr() * ENERGY_FTLBF / (bow.energyFtlbf() - ENERGY_FTLBF);
    truth.append(
        String.format(
            Locale.ROOT,
            "%s, %.0f lb: cast %.1f ft/s at %.0f gr; E %.1f ft lbf, K %.0f gr; reaches it at %.0f gr%n",
            bow.name(),
            bow.drawWeightLb(),
            bow.fps(massGr),
            massGr,
            bow.energyFtlbf(),
            bow.virtualMassGr(),
            reached));
  }
}
