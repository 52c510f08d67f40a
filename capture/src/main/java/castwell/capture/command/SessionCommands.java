package castwell.capture.command;

import castwell.capture.announce.AnnouncedStore;
import castwell.capture.command.Refused.Why;
import castwell.capture.derive.Derivation;
import castwell.capture.derive.SessionFigures;
import castwell.capture.store.Feed;
import castwell.capture.store.Passages;
import castwell.capture.store.Sessions.Session;
import castwell.capture.store.Transaction;
import java.time.Clock;
import java.util.OptionalLong;

/** What a person may say of a whole session. */
public final class SessionCommands {
  private final AnnouncedStore announced;
  private final Derivation derivation;
  private final Clock clock;

  SessionCommands(AnnouncedStore announced, Derivation derivation, Clock clock) {
    this.announced = announced;
    this.derivation = derivation;
    this.clock = clock;
  }

  /**
   * Decides whether the fronts alone tell a session's speeds, because its tails were slowed, or
   * both ends alike.
   */
  public void decideFronts(String name, boolean frontsTrusted, String by) {
    announced.writing(
        t -> {
          Session session =
              t.sessions()
                  .byName(name)
                  .orElseThrow(() -> Refused.of(Why.NOT_FOUND, "refused.no_session", name));
          t.frontsDecisions().decide(session.id(), frontsTrusted, clock.instant(), by);
          readAnew(t, session);
          t.feed().add(Feed.Kind.REFRESH, session.station(), OptionalLong.empty());
        });
  }

  private void readAnew(Transaction t, Session session) {
    t.passages().ofSession(session.id()).stream()
        .mapToLong(Passages.Row::boardId)
        .distinct()
        .forEach(board -> readAnew(t, session, board));
  }

  private void readAnew(Transaction t, Session session, long board) {
    SessionFigures figures = derivation.session(session.id(), board);
    figures.readAnew(t, figures.told(t, session.station(), session.startedMs()));
  }
}
