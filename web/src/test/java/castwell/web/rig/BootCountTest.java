package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The count of starts, with the power cut at random moments, also amid a write of the EEPROM, which
 * leaves in that cell whatever it likes. More of it: {@code -Dcastwell.resets=1000}.
 */
@Timeout(600)
@Tag("rig")
class BootCountTest {
  private static final int RESETS = Integer.getInteger("castwell.resets", 150);

  /** By then the board has said who it is, whatever it had to write. */
  private static final double SURELY_TOLD = 0.04;

  private static final double LAST_BYTES = 0.0002;
  private static final double WRITES_LAST = 0.016;
  private static final int PLACES = 256;

  @TempDir Path folder;

  @Test
  void onANewBoardNoNumberComesTwiceThoughThePowerIsCutAmidWrites() throws IOException {
    numbersAreRightThroughPowerCuts(new byte[0], -1);
  }

  @Test
  void onAnOldBoardNoNumberComesTwiceThoughThePowerIsCutAmidWrites() throws IOException {
    numbersAreRightThroughPowerCuts(cellsAfter(1_300), 1_300);
  }

  /** What the EEPROM holds after so many starts. */
  private static byte[] cellsAfter(int last) {
    byte[] cells = new byte[1024];
    for (int count = last - PLACES + 1; count <= last; count++) {
      int place = count % PLACES * 4;
      cells[place] = (byte) count;
      cells[place + 1] = (byte) (count >> 8);
      cells[place + 2] = (byte) ~count;
      cells[place + 3] = (byte) (~count >> 8);
    }
    return cells;
  }

  private void numbersAreRightThroughPowerCuts(byte[] cells, int last) throws IOException {
    Path eeprom = folder.resolve("eeprom");
    if (cells.length > 0) {
      Files.write(eeprom, cells);
    }
    long seed = Seed.of(BootCountTest.class);
    Random random = new Random(seed);
    Script script = new Script();
    double[] starts = new double[RESETS + 1];
    for (int i = 1; i <= RESETS; i++) {
      boolean amidWrites = random.nextInt(3) > 0;
      double lasts = amidWrites ? WRITES_LAST * random.nextDouble() : 0.2 * random.nextDouble();
      starts[i] = starts[i - 1] + 0.0002 + lasts;
      script.at(starts[i], "reset power");
    }
    RigRun run =
        RigRun.of(
            script.at(starts[RESETS] + 0.1, "end"),
            folder,
            "--eeprom",
            eeprom.toString(),
            "--seed",
            String.valueOf(seed & 0xFFFF_FFFL));
    numbersAreRight(run, starts, last);
    System.out.printf(
        "%d starts, %d told, highest %d, most writes of one cell %d%n",
        starts.length,
        run.heard('I').count(),
        run.last('I').number(5),
        run.measure("eeprom-most-writes"));
    assertThat(run.measure("eeprom-most-writes")).isLessThanOrEqualTo(4L + RESETS / 32);
  }

  private static void numbersAreRight(RigRun run, double[] starts, int last) {
    long before = last;
    int startBefore = -1;
    int told = 0;
    for (Heard line : run.heard('I').toList()) {
      double at = line.micros() / 1e6 - LAST_BYTES; // they come though the board starts anew
      int start = (int) Arrays.stream(starts).filter(s -> s < at).count() - 1;
      assertThat(line.number(5)).as("%s after %d", line, before).isGreaterThan(before);
      assertThat(line.number(5) - before)
          .as("one up for each start at most")
          .isLessThanOrEqualTo(start - startBefore);
      before = line.number(5);
      startBefore = start;
      told++;
    }
    int lasting = 0;
    for (int i = 0; i + 1 < starts.length; i++) {
      lasting += starts[i + 1] - starts[i] > SURELY_TOLD ? 1 : 0;
    }
    assertThat(told).as("every start that lasted was told").isGreaterThan(lasting);
  }

  @Test
  void after65535Comes0() throws IOException {
    Path eeprom = Files.write(folder.resolve("eeprom"), cellsAfter(65_534));
    Script script = new Script();
    for (int i = 1; i <= 3; i++) {
      script.at(0.1 * i, "reset pin");
    }
    RigRun run = RigRun.of(script.at(0.4, "end"), folder, "--eeprom", eeprom.toString());
    assertThat(run.heard('I').map(line -> line.number(5)).toList())
        .containsExactly(65_535L, 0L, 1L, 2L);
  }

  @Test
  void anEepromOfNonsenseCountsFromTheStart() throws IOException {
    byte[] nonsense = new byte[1024];
    new Random(7).nextBytes(nonsense);
    Path eeprom = Files.write(folder.resolve("eeprom"), nonsense);
    RigRun run =
        RigRun.of(
            new Script().at(0.1, "reset power").at(0.2, "end"),
            folder,
            "--eeprom",
            eeprom.toString());
    assertThat(run.heard('I').map(line -> line.number(5)).toList()).isEqualTo(List.of(0L, 1L));
  }
}
