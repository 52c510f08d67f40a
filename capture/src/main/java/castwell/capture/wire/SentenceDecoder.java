package castwell.capture.wire;

import castwell.analysis.shot.EdgeKind;
import castwell.analysis.shot.Gate;
import castwell.capture.wire.Sentence.EdgeSeen;
import castwell.capture.wire.Sentence.Heartbeat;
import castwell.capture.wire.Sentence.Identity;
import castwell.capture.wire.Sentence.Key;
import castwell.capture.wire.Sentence.Levels;
import castwell.capture.wire.Sentence.Loss;
import castwell.capture.wire.Sentence.Missing;
import castwell.capture.wire.Sentence.Press;
import castwell.capture.wire.Sentence.Surroundings;
import java.util.Optional;

/** Decodes the fields of a sentence whose CRC is right into a {@link Sentence}. */
final class SentenceDecoder {
  private static final int MAX16 = 0xFFFF;
  private static final long MAX32 = 0xFFFF_FFFFL;
  private static final long MAX48 = 0xFFFF_FFFF_FFFFL;
  private static final int LINE_END_BYTES = 2;

  private SentenceDecoder() {}

  /**
   * @param type the sentence's letter
   * @param fields the fields, of which the line number was read last
   * @param length the length of the line on the wire without its end, in bytes
   * @return the sentence; empty for a type that isn't known
   * @throws SentenceFields.Bad when a field isn't what the protocol says
   */
  static Optional<Sentence> decode(char type, int line, SentenceFields fields, int length) {
    return switch (type) {
      case 'I' -> Optional.of(identity(line, fields));
      case 'E' -> Optional.of(edge(line, fields));
      case 'H' -> Optional.of(heartbeat(line, fields, length + LINE_END_BYTES));
      case 'L' -> Optional.of(loss(line, fields));
      case 'M' -> Optional.of(missing(line, fields));
      case 'K' -> Optional.of(key(line, fields));
      default -> Optional.empty();
    };
  }

  private static Identity identity(int line, SentenceFields f) {
    int protocol = f.readInteger(1, MAX16);
    String firmware = f.readName();
    String device = f.readName();
    int boot = f.readInteger(0, MAX16);
    int hz = f.readInteger(1, Integer.MAX_VALUE);
    f.readIfKnown(0, MAX16); // The number of gates is always two in this version.
    int latencyA = f.readIfKnown(Integer.MIN_VALUE + 1, Integer.MAX_VALUE).orElse(0);
    int latencyB = f.readIfKnown(Integer.MIN_VALUE + 1, Integer.MAX_VALUE).orElse(0);
    int keep = f.readIfKnown(0, Integer.MAX_VALUE).orElse(0);
    char cause = f.isEmpty() ? 'U' : f.readLetter();
    return new Identity(
        line, protocol, firmware, device, boot, hz, latencyA, latencyB, keep, cause);
  }

  private static EdgeSeen edge(int line, SentenceFields f) {
    return new EdgeSeen(
        line,
        f.readInteger(0, MAX16),
        f.readInteger(1, Integer.MAX_VALUE),
        readGate(f),
        readKind(f),
        f.readInteger(0L, MAX32),
        f.readIfKnown(0, Integer.MAX_VALUE).orElse(0));
  }

  private static Heartbeat heartbeat(int line, SentenceFields f, int bytes) {
    return new Heartbeat(
        line,
        f.readInteger(0, MAX16),
        f.readInteger(0L, MAX48),
        f.readIfKnown(0, Integer.MAX_VALUE).orElse(0),
        f.readInteger(0, Integer.MAX_VALUE),
        f.readIfKnown(0, Integer.MAX_VALUE).orElse(0),
        f.readIfKnown(0, Integer.MAX_VALUE).orElse(0),
        readLevels(f),
        new Surroundings(
            f.readIfKnown(0, 1023),
            f.readIfKnown(0, 1023),
            f.readIfKnown(0, Integer.MAX_VALUE),
            f.readIfKnown(Short.MIN_VALUE, Short.MAX_VALUE),
            f.readIfKnown(Short.MIN_VALUE, Short.MAX_VALUE),
            f.readIfKnown(0, 10_000)),
        bytes);
  }

  private static Loss loss(int line, SentenceFields f) {
    return new Loss(
        line,
        f.readInteger(0, MAX16),
        readGate(f),
        f.readInteger(0L, MAX32),
        f.readInteger(0L, MAX32),
        f.readInteger(0L, MAX32));
  }

  private static Missing missing(int line, SentenceFields f) {
    int boot = f.readInteger(0, MAX16);
    int first = f.readInteger(1, Integer.MAX_VALUE);
    return new Missing(line, boot, first, f.readInteger(first, Integer.MAX_VALUE));
  }

  private static Key key(int line, SentenceFields f) {
    int boot = f.readInteger(0, MAX16);
    int key = f.readInteger(1, 9);
    Press press =
        switch (f.readLetter()) {
          case 'S' -> Press.SHORT;
          case 'L' -> Press.LONG;
          default -> throw new SentenceFields.Bad();
        };
    return new Key(line, boot, key, press, f.readInteger(0L, MAX32));
  }

  private static Gate readGate(SentenceFields f) {
    return switch (f.readLetter()) {
      case 'A' -> Gate.A;
      case 'B' -> Gate.B;
      default -> throw new SentenceFields.Bad();
    };
  }

  private static EdgeKind readKind(SentenceFields f) {
    try {
      return EdgeKind.ofLetter(f.readLetter());
    } catch (IllegalArgumentException e) {
      throw new SentenceFields.Bad();
    }
  }

  private static Optional<Levels> readLevels(SentenceFields f) {
    if (f.isEmpty()) {
      f.readIfKnown(0, 0);
      return Optional.empty();
    }
    return switch (f.readText(2)) {
      case "CC" -> Optional.of(new Levels(false, false));
      case "BC" -> Optional.of(new Levels(true, false));
      case "CB" -> Optional.of(new Levels(false, true));
      case "BB" -> Optional.of(new Levels(true, true));
      default -> throw new SentenceFields.Bad();
    };
  }
}
