package castwell.capture.cell;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.SetUp;
import castwell.capture.cell.SessionCells.Stray;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Sessions made by a generator, so that it is known which of their shots were plucked. */
class SessionCellsTest {
  private static final double PLUCKED = 0.03;
  private static final double GATES_U = 0.001;
  private static final int SESSIONS = Integer.getInteger("castwell.repeats", 700);

  private final long seed = Long.getLong("castwell.seed", 20260501);
  private final Random random = new Random(seed);
  private final Set<String> plucked = new HashSet<>();

  private static Cell cell(String bow, String arrow, List<CellShot> shots) {
    CellName name = new CellName(bow, "2026-01-01", arrow, "2026-05-01");
    return new Cell(name, 0.03, new SetUp("range", 0.002), shots, List.of());
  }

  /** A bow's cells, in which so many shots of each cell were plucked as it says. */
  private List<Cell> shot(String bow, double scatter, int shots, int... pluckedOfCell) {
    List<Cell> cells = new ArrayList<>();
    for (int a = 0; a < pluckedOfCell.length; a++) {
      List<CellShot> of = new ArrayList<>();
      double mps = 50 - 4 * a;
      for (int i = 0; i < shots; i++) {
        String id = bow + a + "-" + i;
        boolean isPlucked = i < pluckedOfCell[a];
        double off = scatter * random.nextGaussian() - (isPlucked ? pluck() : 0);
        of.add(new CellShot(id, i, mps * Math.exp(off), mps * GATES_U, false));
        if (isPlucked) {
          plucked.add(id);
        }
      }
      cells.add(cell(bow, "arrow " + a, of));
    }
    return cells;
  }

  private double pluck() {
    return 0.05 + 0.05 * random.nextDouble();
  }

  private static Set<String> aside(SessionCells session) {
    Set<String> ids = new HashSet<>();
    session.strays().stream()
        .filter(Stray::isSetAside)
        .forEach(stray -> ids.add(stray.shot().id()));
    return ids;
  }

  @Test
  void pluckedShotsInCellsOfThreeAreAllSetAside() {
    List<Cell> cells = new ArrayList<>(shot("Ash", 0.005, 3, 1, 0, 1, 0));
    cells.addAll(shot("Elm", 0.005, 3, 0, 1, 1, 0));
    cells.addAll(shot("Yew", 0.005, 3, 1, 1, 0, 1));

    SessionCells session = SessionCells.of("2026-05-01", cells);

    assertThat(aside(session)).as("seed %d", seed).hasSize(7).isEqualTo(plucked);
    assertThat(session.cells()).extracting(cell -> cell.shots().size()).contains(2, 3);
    assertThat(session.cells().get(0).setAside().get(0).reasons().get(0).key())
        .isEqualTo("report.strays.reason");
  }

  /** A twentieth of its speed is nothing to a bow that scatters by 2 %. */
  @Test
  void eachBowIsJudgedByItsOwnSpread() {
    double[] steady = {50, 50.1, 49.9, 50, 48.5};
    double[] wild = {50, 51.5, 48.9, 50.8, 48.5};
    List<Cell> cells = new ArrayList<>();
    for (int a = 0; a < 2; a++) {
      cells.add(cell("Steady", "arrow " + a, shots("steady" + a, steady, false)));
      cells.add(cell("Wild", "arrow " + a, shots("wild" + a, wild, false)));
    }

    assertThat(aside(SessionCells.of("2026-05-01", cells)))
        .containsExactlyInAnyOrder("steady0-4", "steady1-4");
  }

  @Test
  void whatAPersonBroughtBackStaysAndIsNotDoubted() {
    double[] speeds = {50, 50.1, 45};

    assertThat(strays(speeds, false)).hasSize(1).allMatch(Stray::isSetAside);
    assertThat(strays(speeds, true)).isEmpty();
  }

  /** Sure of neither: it counts, and is told. */
  @Test
  void whatIsLessLikelyAStrayIsOnlyDoubted() {
    SessionCells session =
        SessionCells.of(
            "2026-05-01",
            List.of(cell("Ash", "arrow", shots("ash", new double[] {50, 50.4, 48.5}, false))));

    assertThat(session.strays()).hasSize(1).noneMatch(Stray::isSetAside);
    assertThat(session.cells().get(0).shots()).hasSize(3);
  }

  private static List<Stray> strays(double[] speeds, boolean kept) {
    Cell cell = cell("Ash", "arrow", shots("ash", speeds, kept));
    return SessionCells.of("2026-05-01", List.of(cell)).strays();
  }

  private static List<CellShot> shots(String id, double[] speeds, boolean kept) {
    return IntStream.range(0, speeds.length)
        .mapToObj(i -> new CellShot(id + "-" + i, i, speeds[i], GATES_U * 50, kept))
        .toList();
  }

  /** The goal is 1 % missed and 0.1 % lost; what cells of three can't tell, season.md says. */
  @Test
  void hardlyAPluckedShotStaysAndHardlyAGoodOneGoes() {
    for (int shots : List.of(3, 4, 6)) {
      int[] told = new int[6];
      for (int s = 0; s < SESSIONS; s++) {
        count(shots, told);
      }
      double missed = 100.0 * told[1] / told[0];
      double lost = 100.0 * told[3] / told[2];
      System.out.printf(
          "| %d | %d | %.2f %% | %.3f %% | %.1f %% |%n",
          shots, told[0], missed, lost, 100.0 * told[5] / told[4]);
      assertThat(missed).as("missed in cells of %d, seed %d", shots, seed).isLessThan(2);
      assertThat(lost).as("lost in cells of %d, seed %d", shots, seed).isLessThan(0.1);
    }
  }

  /** Plucked, missed; good, lost; plucked together with half of their cell or more, missed. */
  private void count(int shots, int[] told) {
    List<Cell> cells = new ArrayList<>();
    Set<String> tooMany = new HashSet<>();
    for (int bow = 0; bow < 1 + random.nextInt(3); bow++) {
      int[] pluckedOfCell =
          random
              .ints(3 + random.nextInt(3), 0, 1)
              .map(none -> (int) random.doubles(shots).filter(u -> u < PLUCKED).count())
              .toArray();
      double scatter = Math.exp(Math.log(0.003) + random.nextDouble() * Math.log(0.01 / 0.003));
      cells.addAll(shot("bow" + bow + ".", scatter, shots, pluckedOfCell));
      for (int a = 0; a < pluckedOfCell.length; a++) {
        if (pluckedOfCell[a] > (shots - 1) / 2) {
          tooMany.add("bow" + bow + "." + a);
        }
      }
    }
    Set<String> aside = aside(SessionCells.of("2026-05-01", cells));
    for (Cell cell : cells) {
      for (CellShot shot : cell.shots()) {
        boolean isPlucked = plucked.contains(shot.id());
        boolean isAside = aside.contains(shot.id());
        int kind = tooMany.contains(shot.id().split("-")[0]) ? 4 : 0;
        if (kind == 0 || isPlucked) {
          told[isPlucked ? kind : 2]++;
          told[(isPlucked ? kind : 2) + 1] += isPlucked == isAside ? 0 : 1;
        }
      }
    }
    plucked.clear();
  }
}
