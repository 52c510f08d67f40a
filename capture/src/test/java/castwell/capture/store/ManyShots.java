package castwell.capture.store;

import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.capture.measure.Measures;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/**
 * A store of very many shots, written at once: outings of about a hundred shots, each with three
 * bows and four arrows; every bow was reworked once.
 */
public final class ManyShots {
  private static final int BOWS = 30;
  private static final int ARROWS = 10;
  private static final int OF_A_SESSION = 100;
  private static final String STATION = "range";
  private static final Instant FIRST = Instant.parse("1996-04-01T09:00:00Z");

  private final Handle handle;
  private final Random random;
  private final List<Long> bows = new ArrayList<>();
  private final List<Long> arrows = new ArrayList<>();

  private ManyShots(Handle handle, long seed) {
    this.handle = handle;
    this.random = new Random(seed);
  }

  /** Fills a new folder. */
  public static void fill(Path folder, int shots, long seed) {
    try (Store store = Store.open(folder)) {
      store.writing(
          t -> {
            ManyShots many = new ManyShots(t.handle(), seed);
            if (shots > 0) {
              many.rack(t, shots);
              many.shots(t, shots);
            }
          });
    }
  }

  private static int sessions(int shots) {
    return (shots + OF_A_SESSION - 1) / OF_A_SESSION;
  }

  private static Instant day(int session) {
    return FIRST.plus(Duration.ofDays(1).multipliedBy(session));
  }

  private void rack(Transaction t, int shots) {
    Instant half = day(sessions(shots) / 2).minus(Duration.ofHours(2));
    for (int i = 0; i < BOWS; i++) {
      long bow = t.rack().addBow("bow " + (i + 1), FIRST);
      double newtons = 180 + 3 * i;
      t.rack().addState(bow, FIRST.minusSeconds(60), newtons, 0.7, Measures.none(), "", FIRST);
      t.rack().addState(bow, half, newtons, 0.7, Measures.none(), "tips", half);
      bows.add(bow);
    }
    for (int i = 0; i < ARROWS; i++) {
      long arrow = t.rack().addArrow("arrow " + (i + 1), FIRST);
      double kg = 0.024 + 0.002 * i;
      t.rack().enterArrow(arrow, kg, Measures.none(), FIRST);
      arrows.add(arrow);
    }
    Calibration gates = new Calibration(0.6, 0.0003, 0.001, 2, Oscillator.CRYSTAL);
    t.calibrations().enter(STATION, FIRST.minusSeconds(60), Optional.empty(), gates, FIRST, "test");
  }

  private void shots(Transaction t, int shots) {
    PreparedBatch passages =
        handle.prepareBatch(
            """
            INSERT INTO passage (id, shot_id, board_id, boot, first_edge, last_edge, first_ticks, board_restarted,
              edges_dropped, listening_id, station, fired_ms, session_id, end_number, calibration_id)
            VALUES (?, ?, 1, 1, ?, ?, ?, 0, 0, 1, 'range', ?, ?, ?, 1)""");
    PreparedBatch figures =
        handle.prepareBatch(
            """
            INSERT INTO figure (passage_id, calibration_id, rules_version, hz, hz_relative_u, air_density, speed_mps,
              speed_u_own_mps, speed_u_common_mps, front_mps, front_u_mps, tail_mps, tail_u_mps, length_m, length_u_m,
              clean, verdict, reason)
            VALUES (?, 1, 1, 2000000, 1e-5, 1.2, ?, 0.1, 0.03, ?, 0.14, ?, 0.14, 0.74, 0.003, ?, ?, ?)""");
    PreparedBatch tags =
        handle.prepareBatch(
            """
            INSERT INTO shot_tag (passage_id, bow_id, arrow_id, at_ms, tagged_by, why)
            VALUES (?, ?, ?, ?, 'capture', '')""");
    handle.execute("INSERT INTO board (id, device, series) VALUES (1, 'gate-1', 1)");
    handle.execute(
        "INSERT INTO listening (id, station, source, started_ms) VALUES (1, 'range', 'test', ?)",
        FIRST.toEpochMilli());
    long session = 0;
    for (int i = 0; i < shots; i++) {
      int day = i / OF_A_SESSION;
      int within = i % OF_A_SESSION;
      if (within == 0) {
        session =
            t.sessions().begin(STATION, day(day), day(day).toString().substring(0, 10), "a shot");
      }
      long id = i + 1L;
      long fired = day(day).toEpochMilli() + 20_000L * within;
      int bow = (day * 3 + within % 3) % BOWS;
      int arrow = (day + within / 3 % 4 * 3) % ARROWS;
      double kg = 0.024 + 0.002 * arrow;
      double mps = Math.sqrt(2 * (40 + bow) / (kg + 0.016)) + 0.3 * random.nextGaussian();
      boolean clean = random.nextInt(50) > 0;
      passages
          .bind(0, id)
          .bind(1, "gate-1.1." + id)
          .bind(2, 4 * i + 1)
          .bind(3, 4 * i + 4)
          .bind(4, 40_000_000L * i)
          .bind(5, fired)
          .bind(6, session)
          .bind(7, 1 + within / 12)
          .add();
      figures
          .bind(0, id)
          .bind(1, mps)
          .bind(2, mps)
          .bind(3, mps)
          .bind(4, clean)
          .bind(5, clean ? "clean" : "one gate")
          .bind(6, clean ? "" : "Gate B never saw its front.")
          .add();
      tags.bind(0, id).bind(1, bows.get(bow)).bind(2, arrows.get(arrow)).bind(3, fired).add();
      if (passages.size() == 5000 || i == shots - 1) {
        passages.execute();
        figures.execute();
        tags.execute();
      }
    }
  }
}
