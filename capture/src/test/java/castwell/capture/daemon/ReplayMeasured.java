package castwell.capture.daemon;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.daemon.PaperWire.Fate;
import castwell.capture.recording.BadRecording;
import castwell.capture.store.BareRows;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How many passages a second a replay takes in, from the recording's text to the disk, and how many
 * a bare loop that only writes the same rows. Its name keeps it out of the suite: see .ci/measure.
 */
class ReplayMeasured {
  private static final int RECORDINGS = 25;
  private static final int OF_A_RECORDING =
      Integer.getInteger("castwell.passages", 20_000) / RECORDINGS;
  private static final int ROUNDS = Integer.getInteger("castwell.rounds", 5);

  @TempDir Path temp;

  @Test
  void againstABareLoop() throws IOException, BadRecording, InterruptedException {
    List<Path> files = new ArrayList<>();
    for (int i = 0; i < RECORDINGS; i++) {
      files.add(outing(i, OF_A_RECORDING, 1));
    }
    int passages = RECORDINGS * OF_A_RECORDING;
    double[] replayed = new double[ROUNDS];
    double[] bare = new double[ROUNDS];
    for (int round = 0; round < ROUNDS; round++) {
      Path folder = temp.resolve("replayed-" + round);
      long began = System.nanoTime();
      try (RangeBench bench = RangeBench.in(folder)) {
        for (Path file : files) {
          bench.replay(file);
        }
        replayed[round] = passages / ((System.nanoTime() - began) / 1e9);
      }
      BareRows rows = BareRows.of(folder);
      began = System.nanoTime();
      rows.writeTo(temp.resolve("bare-" + round));
      bare[round] = passages / ((System.nanoTime() - began) / 1e9);
    }
    Arrays.sort(replayed);
    Arrays.sort(bare);
    System.out.printf(
        "| replay, passages a second (the best and the median of %d) | %.0f | %.0f |%n",
        ROUNDS, replayed[ROUNDS - 1], replayed[ROUNDS / 2]);
    System.out.printf(
        "| the same rows by a bare loop | %.0f | %.0f |%n", bare[ROUNDS - 1], bare[ROUNDS / 2]);
    System.out.printf("| ratio | %.2f | |%n", replayed[ROUNDS / 2] / bare[ROUNDS / 2]);
  }

  /** Days of 1,600 shots, with the board's beat each second, ten and more of them in one store. */
  @Test
  void wholeDays() throws IOException, BadRecording, InterruptedException {
    int days = Integer.getInteger("castwell.days", 10);
    List<Path> files = new ArrayList<>();
    for (int day = 0; day < days; day++) {
      files.add(outing(day, 1600, 16.09));
    }
    try (RangeBench bench = RangeBench.in(temp.resolve("days"))) {
      long began = System.nanoTime();
      long busy = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      for (int day = 0; day < days; day++) {
        bench.replay(files.get(day));
        System.out.printf(
            "| days of 1,600 shots and 25,744 beats, after %d | %.1f s | %.1f s of the processor |%n",
            day + 1,
            (System.nanoTime() - began) / 1e9,
            (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - busy) / 1e9);
      }
    }
  }

  /** An arrow now and then, and the board's beat beside it. */
  private Path outing(int number, int arrows, double secondsApart) throws IOException {
    Random random = new Random(number);
    var nature = new BoardOnPaper.Nature("measured", 2e6, 40_000_000, 1 + number, 0, 0, 0, 0, 1e-3);
    BoardOnPaper board = new BoardOnPaper(nature, random);
    double now = 2.5;
    for (int i = 0; i < arrows; i++) {
      double toB = 0.6096 / (50 + random.nextDouble());
      double length = 0.0118 + 0.0002 * random.nextDouble();
      board.edge(now, Gate.A, EdgeKind.BLOCKED, 0, Fate.SENT);
      board.edge(now + toB, Gate.B, EdgeKind.BLOCKED, 0, Fate.SENT);
      board.edge(now + length, Gate.A, EdgeKind.CLEAR, 0, Fate.SENT);
      board.edge(now + toB + length, Gate.B, EdgeKind.CLEAR, 0, Fate.SENT);
      now += secondsApart;
    }
    board.liveUntil(now + 2);
    String header =
        """
        # recording: 1
        # name: measured
        # started: 2026-05-%02dT09:00:00.000Z
        # gate-spacing-mm: 609.6
        # gate-spacing-u-mm: 0.29
        # gates-from-bow-m: 2.0
        """
            .formatted(1 + number);
    return Files.writeString(
        temp.resolve("outing-" + number + ".rec"), header + board.wireAt(0).text());
  }
}
