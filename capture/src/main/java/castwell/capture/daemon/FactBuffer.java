package castwell.capture.daemon;

import castwell.capture.store.RawFacts.ReceivedBeat;
import castwell.capture.store.Transaction;
import castwell.capture.wire.Sentence;
import castwell.capture.wire.Sentence.Heartbeat;
import java.util.ArrayList;
import java.util.List;

/** Raw facts besides edges, on their way into the next transaction. */
final class FactBuffer {
  private final List<Fact> facts = new ArrayList<>();
  private final List<Beat> beats = new ArrayList<>();

  @FunctionalInterface
  private interface Fact {
    void write(Transaction t);
  }

  private record Beat(long board, long listening, ReceivedBeat received) {}

  void beat(long board, long listening, Heartbeat beat, long micros) {
    beats.add(new Beat(board, listening, new ReceivedBeat(beat, micros)));
  }

  void identity(long board, long listening, Sentence.Identity identity, long micros) {
    facts.add(t -> t.raw().identity(board, listening, identity, micros));
  }

  void loss(long board, Sentence.Loss loss) {
    facts.add(t -> t.raw().loss(board, loss));
  }

  void missing(long board, Sentence.Missing missing) {
    facts.add(t -> t.raw().missing(board, missing));
  }

  boolean isEmpty() {
    return facts.isEmpty() && beats.isEmpty();
  }

  /** Writes everything; it stays here until {@link #written}. */
  void write(Transaction t) {
    facts.forEach(fact -> fact.write(t));
    for (Beat beat : beats) {
      t.raw().heartbeats(beat.board(), beat.listening(), List.of(beat.received()));
    }
  }

  void written() {
    facts.clear();
    beats.clear();
  }
}
