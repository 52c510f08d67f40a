package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.util.Random;

/**
 * A board that beats every second for days on end, while somebody shoots at some hours: each day it
 * starts anew once and its cable is pulled once; some lines are lost or garbage. Nothing of what it
 * did is kept: a shot's truth follows from its number.
 */
final class UnattendedBoard {
  static final long DAY_SECONDS = 86_400;
  private static final double HZ = 2_000_030;
  private static final int FIRST_SHOT_SECOND = 3600;
  private static final int SECONDS_A_SHOT = 8;
  private static final int RESTART_SECOND = 3 * 3600;
  private static final int PULLED_SECOND = 2 * 3600;

  private final HandFedStation lane;
  private final int shotsADay;
  private final Random random;
  private int boot;
  private int line;
  private int edges;
  private int shots;
  private int shotsCut;
  private int garbage;
  private int restarts;
  private long startedMicros;

  UnattendedBoard(HandFedStation lane, int shotsADay, Random random) {
    this.lane = lane;
    this.shotsADay = shotsADay;
    this.random = random;
  }

  /** All that it does in one second of its life. */
  void second(long second) {
    long start = second * 1_000_000;
    long ofDay = second % DAY_SECONDS;
    if (second == 0) {
      lane.plugIn(0);
      startAnew(1_000);
    } else if (ofDay == RESTART_SECOND) {
      startAnew(start + 1_000);
      restarts++;
    } else if (ofDay == PULLED_SECOND) {
      lane.pullOut(start + 500);
      lane.plugIn(start + 1_000);
    }
    if (second % 60 == 0) {
      identity(start + 2_000);
    }
    beat(start + 10_000 + random.nextInt(16_000));
    if (random.nextInt(5_000) == 0) {
      lane.hear(start + 100_000, "lightning struck".getBytes(US_ASCII));
      garbage++;
    }
    long sinceFirst = ofDay - FIRST_SHOT_SECOND;
    if (sinceFirst >= 0
        && sinceFirst % SECONDS_A_SHOT == 0
        && sinceFirst / SECONDS_A_SHOT < shotsADay) {
      arrow(start + 400_000, mps(shots++));
    }
  }

  /** The speed of the so many-th shot, the first being 0. */
  static double mps(int shot) {
    return 40 + shot * 7919L % 3000 / 100.0;
  }

  int shots() {
    return shots;
  }

  /** Shots of which a line was lost. */
  int shotsCut() {
    return shotsCut;
  }

  int garbage() {
    return garbage;
  }

  int restarts() {
    return restarts;
  }

  private void startAnew(long micros) {
    boot++;
    line = 0;
    edges = 0;
    startedMicros = micros;
    identity(micros);
  }

  private void identity(long micros) {
    say(micros, "I,%d,1,sim-1.0,gate-1,%d,2000000,2,0,0,64,P".formatted(next(), boot));
  }

  private void beat(long micros) {
    say(
        micros + 6_000, // some 70 bytes at 115200 baud
        "H,%d,%d,%d,0,%d,0,0,CC,812,807,5012,2150,1875,5510"
            .formatted(next(), boot, ticks(micros), edges));
  }

  private void arrow(long micros, double mps) {
    double lengthM = 0.72;
    double[] seconds = {0, 0.6096 / mps, lengthM / mps, (0.6096 + lengthM) / mps};
    int lost = random.nextInt(200) == 0 ? random.nextInt(4) : -1;
    for (int i = 0; i < 4; i++) {
      long at = micros + Math.round(seconds[i] * 1e6);
      long ticks = ticks(micros) + Math.round(seconds[i] * HZ);
      String body =
          "E,%d,%d,%d,%c,%c,%d,0"
              .formatted(
                  next(),
                  boot,
                  ++edges,
                  i % 2 == 0 ? 'A' : 'B',
                  i < 2 ? 'B' : 'C',
                  ticks & 0xFFFF_FFFFL);
      if (i == lost) {
        shotsCut++;
      } else {
        say(at + 4_000, body);
      }
    }
  }

  private long ticks(long micros) {
    return Math.round((micros - startedMicros) * 1e-6 * HZ);
  }

  private int next() {
    int next = line;
    line = line + 1 & 0xFFFF;
    return next;
  }

  private void say(long micros, String body) {
    lane.hear(micros, "$%s*%04X".formatted(body, IntactEdge.crc(body)).getBytes(US_ASCII));
  }
}
