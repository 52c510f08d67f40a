package castwell.capture.derive;

import castwell.analysis.verdict.Judge;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Conditions.SessionTold;
import castwell.capture.store.ProgressListener;
import castwell.capture.store.Renewals.Judged;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import java.time.Instant;
import java.util.List;

/**
 * Reads anew, once, what was judged by an earlier program's rules, so that all shots are judged
 * alike. Raw edges and what a person decided stay as they are.
 */
public final class Renewal {
  private final Derivation derivation;

  public Renewal(CaptureSettings settings) {
    this.derivation = new Derivation(settings);
  }

  /**
   * @return how many passages were read anew
   */
  public int renew(Store store, Instant now, ProgressListener progress) {
    if (store.read(t -> t.renewals().areDone(Judge.RULES_VERSION))) {
      return 0;
    }
    List<Judged> older = store.read(t -> t.renewals().judgedBefore(Judge.RULES_VERSION));
    int passages = 0;
    for (int i = 0; i < older.size(); i++) {
      Judged judged = older.get(i);
      passages += store.write(t -> renew(t, judged));
      progress.reached(i + 1, older.size());
    }
    int all = passages;
    store.writing(t -> t.renewals().note(Judge.RULES_VERSION, all, now));
    return passages;
  }

  private int renew(Transaction t, Judged judged) {
    Session session = t.sessions().byId(judged.sessionId()).orElseThrow();
    SessionFigures figures = derivation.session(judged.sessionId(), judged.boardId());
    int passages = figures.readAnew(t, figures.gates(t));
    SessionTold told = figures.told(t, session.station(), session.startedMs());
    if (told.isNewsTo(figures.gates(t))) {
      figures.readAnew(t, told);
    }
    return passages;
  }
}
