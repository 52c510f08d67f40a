package castwell.capture.cell;

import castwell.analysis.air.AtBow;
import castwell.analysis.cell.Cell;
import castwell.analysis.cell.CellName;
import castwell.analysis.cell.CellShot;
import castwell.analysis.cell.SetAside;
import castwell.analysis.cell.SetUp;
import castwell.analysis.wording.Phrase;
import castwell.capture.store.BriefShots.Brief;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Transaction;
import castwell.capture.view.StateName;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the store's shots in the form that the arithmetic takes: by session and cell. */
public final class CellReader {
  private static final Comparator<Cell> BY_BOW_AND_MASS =
      Comparator.comparing((Cell cell) -> cell.name().bow(), String.CASE_INSENSITIVE_ORDER)
          .thenComparing(cell -> cell.name().state())
          .thenComparingDouble(Cell::massKg)
          .thenComparing(cell -> cell.name().arrow());

  private final Transaction transaction;
  private final ZoneId zone;
  private final Map<Long, List<BowState>> states = new HashMap<>();
  private final Map<Long, Arrow> arrows = new HashMap<>();

  /** The sessions read so far, since two bows of one report were often shot in the same ones. */
  private final Map<String, SessionCells> read = new HashMap<>();

  public CellReader(Transaction transaction, ZoneId zone) {
    this.transaction = transaction;
    this.zone = zone;
    transaction.rack().arrows().forEach(arrow -> arrows.put(arrow.id(), arrow));
  }

  /** Every session in which the bow was shot, with all that was shot there. */
  public List<SessionCells> ofBow(long bowId) {
    return transaction.sessions().ofBow(bowId).stream().map(this::ofSession).toList();
  }

  public SessionCells ofSession(String session) {
    return read.computeIfAbsent(
        session, s -> SessionCells.of(s, cells(transaction.briefShots().ofSession(s))));
  }

  /**
   * What was shot with one bow in a session so far.
   *
   * @param most of its shots, the last ones
   */
  public SessionCells soFar(String session, long bowId, int most) {
    return SessionCells.of(
        session, cells(transaction.briefShots().ofSession(session, bowId, most)));
  }

  private List<Cell> cells(List<Brief> shots) {
    Map<CellName, List<Brief>> groups = new LinkedHashMap<>();
    for (Brief shot : shots) {
      groups.computeIfAbsent(name(shot), name -> new ArrayList<>()).add(shot);
    }
    return groups.entrySet().stream()
        .map(group -> cell(group.getKey(), group.getValue()))
        .sorted(BY_BOW_AND_MASS)
        .toList();
  }

  private CellName name(Brief shot) {
    BowState state = state(shot);
    return new CellName(
        state.bow(),
        StateName.of(state.since(), zone),
        arrows.get(shot.arrowId()).name(),
        shot.session());
  }

  /**
   * The state of the bow at the time of the shot; a shot from before the first state counts to that
   * one.
   */
  private BowState state(Brief shot) {
    List<BowState> all = states.computeIfAbsent(shot.bowId(), transaction.rack()::states);
    return all.stream()
        .filter(state -> !state.since().isAfter(shot.fired()))
        .reduce((first, second) -> second)
        .orElse(all.get(0));
  }

  private Cell cell(CellName name, List<Brief> shots) {
    Arrow arrow = arrows.get(shots.get(0).arrowId());
    boolean areAtBow = shots.stream().allMatch(shot -> atBow(shot, arrow).isKnown());
    double shares = 0;
    List<CellShot> counting = new ArrayList<>();
    List<SetAside> aside = new ArrayList<>();
    for (Brief shot : shots) {
      if (shot.counts() && shot.speedMps().isPresent()) {
        AtBow atBow = areAtBow ? atBow(shot, arrow) : AtBow.NOT_KNOWN;
        shares += atBow.share();
        counting.add(cellShot(shot, atBow.factor()));
      } else {
        aside.add(new SetAside(shot.shotId(), reasons(shot)));
      }
    }
    AtBow mean = counting.isEmpty() ? AtBow.NOT_KNOWN : new AtBow(shares / counting.size());
    return new Cell(name, arrow.massKg(), setUp(shots), counting, aside, mean);
  }

  /** Not known of a speed that was entered by hand, and of an arrow without a diameter. */
  private static AtBow atBow(Brief shot, Arrow arrow) {
    return shot.way().isPresent() && arrow.diameterM().isPresent()
        ? AtBow.of(
            arrow.diameterM().getAsDouble(),
            arrow.massKg(),
            shot.way().get().airDensity(),
            shot.way().get().metres())
        : AtBow.NOT_KNOWN;
  }

  private List<Phrase> reasons(Brief shot) {
    return transaction.shots().byPassage(shot.passageId()).orElseThrow().reasons();
  }

  private static CellShot cellShot(Brief shot, double toBow) {
    return new CellShot(
        shot.shotId(),
        shot.fired().toEpochMilli() / 1e3,
        shot.speedMps().orElseThrow() * toBow,
        shot.speedUOwnMps() * toBow,
        shot.judgedByPerson());
  }

  /** The set-up of a cell, taken from the gates of its last shot with a speed. */
  private static SetUp setUp(List<Brief> shots) {
    return shots.stream()
        .filter(shot -> shot.speedMps().isPresent())
        .reduce((first, second) -> second)
        .map(
            shot ->
                new SetUp(setUpName(shot), shot.speedUCommonMps() / shot.speedMps().orElseThrow()))
        .orElse(new SetUp("none", 0));
  }

  /**
   * The name of the set-up. What a display that was read has wrong for all its shots doesn't become
   * less by reading it on many days, so all that was read is one set-up.
   */
  private static String setUpName(Brief shot) {
    return shot.calibrationId().isPresent()
        ? SetUps.name(shot.station(), shot.calibrationId().getAsLong())
        : "by hand";
  }
}
