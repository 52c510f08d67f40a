package castwell.capture.station;

import castwell.capture.store.Transaction;
import castwell.capture.wire.Sentence;
import castwell.capture.wire.Sentence.Heartbeat;
import java.util.ArrayList;
import java.util.List;

/** Raw facts besides edges, on their way into the next transaction. */
public final class WaitingFacts {
  private final List<Fact> waitingFacts = new ArrayList<>();

  /** Whose boot a fact is of, and over which stretch of listening it came. */
  record Origin(long board, int boot, Listening listening) {}

  @FunctionalInterface
  private interface Writing {
    void write(Transaction t, Origin origin);
  }

  private record Fact(Origin origin, Writing writing) {}

  void beat(Origin origin, Heartbeat beat, long micros) {
    waitingFacts.add(
        new Fact(
            origin, (t, from) -> t.raw().heartbeat(from.board, from.listening.id(), beat, micros)));
  }

  void identity(Origin origin, Sentence.Identity identity, long micros) {
    waitingFacts.add(
        new Fact(
            origin,
            (t, from) -> t.raw().identity(from.board, from.listening.id(), identity, micros)));
  }

  void loss(Origin origin, Sentence.Loss loss) {
    waitingFacts.add(new Fact(origin, (t, from) -> t.raw().loss(from.board, loss)));
  }

  void missing(Origin origin, Sentence.Missing missing) {
    waitingFacts.add(new Fact(origin, (t, from) -> t.raw().missing(from.board, missing)));
  }

  /** It turned out that another board of that name said it. */
  void move(Origin taken, long board) {
    Origin right = new Origin(board, taken.boot, taken.listening);
    waitingFacts.replaceAll(
        fact -> fact.origin.equals(taken) ? new Fact(right, fact.writing) : fact);
  }

  public int size() {
    return waitingFacts.size();
  }

  boolean isEmpty() {
    return waitingFacts.isEmpty();
  }

  /** Before anything is written: within its transaction that would be undone with it. */
  public void enterListenings() {
    waitingFacts.forEach(fact -> fact.origin.listening.id());
  }

  /** Writes everything; it stays here until {@link #written}. */
  public void write(Transaction t) {
    waitingFacts.forEach(fact -> fact.writing.write(t, fact.origin));
  }

  public void written() {
    waitingFacts.clear();
  }
}
