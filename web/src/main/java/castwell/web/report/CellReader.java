package castwell.web.report;

import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.SetAside;
import castwell.analysis.cell.SetUp;
import castwell.capture.export.ShotColumns;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import castwell.web.text.Speech;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The store's shots as the bow's arithmetic takes them in: by session and cell. */
final class CellReader {
  private static final Comparator<Cell> BY_BOW_AND_MASS =
      Comparator.comparing((Cell cell) -> cell.name().bow(), String.CASE_INSENSITIVE_ORDER)
          .thenComparing(cell -> cell.name().state())
          .thenComparingDouble(Cell::massKg)
          .thenComparing(cell -> cell.name().arrow());

  private final Transaction transaction;
  private final ZoneId zone;

  /** Two bows of one report often shot in the same sessions. */
  private final Map<String, SessionCells> read = new HashMap<>();

  CellReader(Transaction transaction, ZoneId zone) {
    this.transaction = transaction;
    this.zone = zone;
  }

  /** Every session in which the bow was shot, with all that was shot there. */
  List<SessionCells> ofBow(long bowId) {
    Set<String> sessions = new LinkedHashSet<>();
    transaction.shots().ofBow(bowId).forEach(shot -> sessions.add(shot.session()));
    return sessions.stream().map(this::ofSession).toList();
  }

  /** The cells of every session there is, strays set aside. */
  List<Cell> all() {
    Map<String, List<Shot>> sessions = new LinkedHashMap<>();
    transaction
        .shots()
        .each(shot -> sessions.computeIfAbsent(shot.session(), s -> new ArrayList<>()).add(shot));
    return sessions.entrySet().stream()
        .map(session -> SessionCells.of(session.getKey(), cells(session.getValue())))
        .flatMap(session -> session.cells().stream())
        .toList();
  }

  SessionCells ofSession(String session) {
    return read.computeIfAbsent(
        session, s -> SessionCells.of(s, cells(transaction.shots().ofSession(s))));
  }

  /** What has no bow or no arrow belongs to no cell. */
  private List<Cell> cells(List<Shot> shots) {
    Map<CellName, List<Shot>> groups = new LinkedHashMap<>();
    for (Shot shot : shots) {
      if (shot.bow().isPresent() && shot.arrow().isPresent()) {
        groups.computeIfAbsent(name(shot), name -> new ArrayList<>()).add(shot);
      }
    }
    return groups.entrySet().stream()
        .map(group -> cell(group.getKey(), group.getValue()))
        .sorted(BY_BOW_AND_MASS)
        .toList();
  }

  private CellName name(Shot shot) {
    var bow = shot.bow().orElseThrow();
    return new CellName(
        bow.bow(),
        ShotColumns.stateName(bow.since(), zone),
        shot.arrow().orElseThrow().name(),
        shot.session());
  }

  private static Cell cell(CellName name, List<Shot> shots) {
    List<CellShot> counting = new ArrayList<>();
    List<SetAside> aside = new ArrayList<>();
    for (Shot shot : shots) {
      if (shot.counts() && shot.figure().speedMps().isPresent()) {
        counting.add(cellShot(shot));
      } else {
        aside.add(new SetAside(shot.shotId(), Speech.TRADE.say(shot.reasons())));
      }
    }
    double massKg = shots.get(0).arrow().orElseThrow().massKg();
    return new Cell(name, massKg, setUp(shots), counting, aside);
  }

  private static CellShot cellShot(Shot shot) {
    return new CellShot(
        shot.shotId(),
        shot.fired().toEpochMilli() / 1e3,
        shot.figure().speedMps().orElseThrow(),
        shot.figure().speedUOwnMps().orElse(0),
        shot.judgedByPerson());
  }

  /** The gates of the cell's last shot with a speed stand for all of them. */
  private static SetUp setUp(List<Shot> shots) {
    return shots.stream()
        .filter(shot -> shot.figure().speedMps().isPresent())
        .reduce((first, second) -> second)
        .map(
            shot ->
                new SetUp(
                    setUpName(shot),
                    shot.figure().speedUCommonMps().orElse(0)
                        / shot.figure().speedMps().orElseThrow()))
        .orElse(new SetUp("none", 0));
  }

  /** Whether a display read on two days stood in one place isn't known: each session is its own. */
  private static String setUpName(Shot shot) {
    return shot.byGates().isPresent()
        ? shot.station() + ", calibration " + shot.figure().calibrationId()
        : "by hand, " + shot.session();
  }
}
