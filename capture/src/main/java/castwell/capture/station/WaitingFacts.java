package castwell.capture.station;

import castwell.capture.store.Transaction;
import castwell.capture.wire.Sentence;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Loss;
import castwell.capture.wire.Sentence.Missing;
import java.util.ArrayList;
import java.util.List;

/** Raw facts that wait to be written with the next passage, or by a flush. */
public final class WaitingFacts {
  private final Listenings listenings;
  private final List<Fact> facts = new ArrayList<>();

  /** Whose boot a fact is of, and over which stretch of listening it came. */
  record Origin(long board, int boot, Listening listening) {}

  /**
   * What a board said.
   *
   * @param micros of the stretch of listening
   */
  private record Fact(Origin origin, Sentence sentence, long micros) {}

  WaitingFacts(Listenings listenings) {
    this.listenings = listenings;
  }

  void add(Origin origin, Sentence sentence, long micros) {
    facts.add(new Fact(origin, sentence, origin.listening.sinceOpened(micros)));
  }

  /** It turned out that another board of that name said it. */
  void move(Origin taken, long board) {
    Origin right = new Origin(board, taken.boot, taken.listening);
    facts.replaceAll(
        fact -> fact.origin.equals(taken) ? new Fact(right, fact.sentence, fact.micros) : fact);
  }

  public int size() {
    return facts.size();
  }

  boolean isEmpty() {
    return facts.isEmpty();
  }

  /** Before anything is written: within its transaction that would be undone with it. */
  public void enterListenings() {
    facts.forEach(fact -> listenings.enter(fact.origin.listening));
  }

  /** Writes everything; it stays here until {@link #written}. */
  public void write(Transaction t) {
    facts.forEach(fact -> write(t, fact));
  }

  private void write(Transaction t, Fact fact) {
    long board = fact.origin.board;
    if (fact.sentence instanceof Heartbeat beat) {
      t.raw().heartbeat(board, listenings.enter(fact.origin.listening), beat, fact.micros);
    } else if (fact.sentence instanceof Identity identity) {
      t.raw().identity(board, listenings.enter(fact.origin.listening), identity, fact.micros);
    } else if (fact.sentence instanceof Loss loss) {
      t.raw().loss(board, loss);
    } else if (fact.sentence instanceof Missing missing) {
      t.raw().missing(board, missing);
    }
  }

  public void written() {
    facts.clear();
  }
}
