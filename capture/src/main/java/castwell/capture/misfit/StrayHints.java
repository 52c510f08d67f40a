package castwell.capture.misfit;

import castwell.analysis.wording.Phrase;
import castwell.capture.cell.CellReader;
import castwell.capture.cell.SessionCells.Stray;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Shot;
import castwell.capture.store.Transaction;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds shots that may be strays by what was shot with the same bow in the session so far, while
 * they can still be remembered. It only points them out and changes nothing.
 */
public final class StrayHints {
  /** How many of the bow's last shots of the session the judgement rests on at most. */
  private static final int LOOK_BACK = 500;

  /** What is pointed out about one shot. */
  public record Hint(double chance, boolean isSetAside, Phrase sentence) {
    private static Hint of(Stray stray) {
      String key = stray.isSetAside() ? "report.strays.told" : "report.strays.told_doubted";
      return new Hint(stray.chance(), stray.isSetAside(), Phrase.of(key, stray.sure()));
    }
  }

  private StrayHints() {}

  /**
   * Points out strays.
   *
   * @param shots of one session
   * @return the hints by shot id
   */
  public static Map<String, Hint> of(Transaction t, ZoneId zone, List<Shot> shots) {
    CellReader reader = new CellReader(t, zone);
    Map<String, Hint> hints = new HashMap<>();
    shots.stream()
        .filter(Shot::counts)
        .flatMap(shot -> shot.bow().stream())
        .map(BowState::bowId)
        .distinct()
        .flatMap(bow -> reader.soFar(shots.get(0).session(), bow, LOOK_BACK).strays().stream())
        .forEach(stray -> hints.put(stray.shot().id(), Hint.of(stray)));
    return hints;
  }
}
