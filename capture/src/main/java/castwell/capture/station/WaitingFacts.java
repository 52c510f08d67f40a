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

  /** The board and boot that a fact is of, and the stretch of listening over which it came. */
  record Origin(long board, int boot, Listening listening) {}

  /**
   * A sentence that waits.
   *
   * @param micros when it came, in microseconds of its stretch of listening
   */
  private record Fact(Origin origin, Sentence sentence, long micros) {}

  WaitingFacts(Listenings listenings) {
    this.listenings = listenings;
  }

  void add(Origin origin, Sentence sentence, long micros) {
    facts.add(new Fact(origin, sentence, origin.listening.sinceOpened(micros)));
  }

  /** Moves facts to another board of the same name, which turned out to have said them. */
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

  /**
   * Enters the stretches of listening. It must be called before the facts' transaction, with which
   * the rows would be undone.
   */
  public void enterListenings() {
    facts.forEach(fact -> listenings.enter(fact.origin.listening));
  }

  /** Writes all facts; they stay here until {@link #clear}, in case the transaction is undone. */
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

  /** Forgets the facts, since they are on the disk. */
  public void clear() {
    facts.clear();
  }
}
