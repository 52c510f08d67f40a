package castwell.capture.store;

import castwell.analysis.shot.Edge;
import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;

/** Rows for tests of the store: one board at one station, passages of four edges. */
public final class Rows {
  public static final Instant NOON = Instant.parse("2026-05-02T12:00:00Z");
  public static final String STATION = "range";
  static final String DATE = "2026-05-02";
  static final int BOOT = 7;

  private Rows() {}

  static Calibration calibration(double spacingM) {
    return new Calibration(spacingM, 0.00029, 0.001, 2.0, Oscillator.CRYSTAL);
  }

  static long board(Transaction t) {
    return t.boards().named("gate-1").stream()
        .findFirst()
        .orElseGet(() -> t.boards().begin("gate-1"))
        .id();
  }

  static long calibrationInForce(Transaction t, Instant at) {
    return t.calibrations()
        .inForce(STATION, at)
        .map(Calibrations.Entry::id)
        .orElseGet(
            () ->
                t.calibrations()
                    .enter(STATION, NOON, Optional.empty(), calibration(0.6096), NOON, "settings"));
  }

  /** A passage with its edges, its figure and its place by the rules; no tags. */
  public static Passages.Row shoot(Transaction t, int firstEdge, Instant fired, boolean clean) {
    long board = board(t);
    long calibration = calibrationInForce(t, fired);
    t.raw().edges(board, BOOT, edges(firstEdge));
    Sessions.Place place = t.sessions().place(STATION, fired, clean, DATE);
    long id =
        t.passages().insert(row(board, firstEdge, fired, place, calibration, listening(t))).id();
    t.figures().put(figure(id, calibration, 50, clean));
    return t.passages().byId(id).orElseThrow();
  }

  static long listening(Transaction t) {
    return t.boards().listening(STATION, "/dev/ttyUSB0", NOON);
  }

  static Passages.Row row(
      long board,
      int firstEdge,
      Instant fired,
      Sessions.Place place,
      long calibration,
      long listening) {
    return new Passages.Row(
        0,
        "gate-1.%d.%d".formatted(BOOT, firstEdge),
        board,
        BOOT,
        new EdgeNumbers(firstEdge, firstEdge + 3, Set.of()),
        1_000_000L * firstEdge,
        false,
        false,
        listening,
        STATION,
        fired,
        place.sessionId(),
        place.endNumber(),
        calibration);
  }

  static <T> List<T> list(Store store, Function<Transaction, List<T>> work) {
    return store.read(work);
  }

  static <T> Optional<T> maybe(Store store, Function<Transaction, Optional<T>> work) {
    return store.read(work);
  }

  static List<Edge> edges(int first) {
    long ticks = 1_000_000L * first;
    return List.of(
        new Edge(first, Gate.A, EdgeKind.BLOCKED, ticks, 0),
        new Edge(first + 1, Gate.B, EdgeKind.BLOCKED, ticks + 24_384, 0),
        new Edge(first + 2, Gate.A, EdgeKind.CLEAR, ticks + 29_600, 20),
        new Edge(first + 3, Gate.B, EdgeKind.CLEAR, ticks + 53_984, 0));
  }

  static Figure figure(long passage, long calibration, double mps, boolean clean) {
    OptionalDouble speed = OptionalDouble.of(mps);
    OptionalDouble u = OptionalDouble.of(0.05);
    return new Figure(
        passage,
        calibration,
        1,
        new Conditions(
            2e6,
            2e6,
            1e-5,
            1.2,
            Conditions.SessionTold.UNKNOWN,
            Conditions.Tagged.NOTHING,
            Conditions.Strays.NONE),
        speed,
        u,
        u,
        speed,
        u,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.of(0.74),
        u,
        OptionalDouble.empty(),
        Conditions.Strays.NONE,
        clean,
        clean ? "clean" : "too-slow",
        clean ? "" : "Too slow for an arrow.");
  }
}
