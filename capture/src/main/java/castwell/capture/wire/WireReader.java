package castwell.capture.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Turns bytes into sentences. A sentence starts at its <code>$</code> and ends at the line's end or
 * at the next <code>$</code>, so that whatever came before it, however long or wild, can't spoil a
 * good sentence. Anything that isn't a sentence is counted by its kind of fault and skipped.
 */
public final class WireReader {
  static final int LONGEST = 120;
  private static final int CRC_DIGITS = 4;
  private static final int LINES = 0x1_0000;
  private static final int NOT_YET = -1;

  private enum Where {
    /** The reader is between lines. */
    OUTSIDE,
    /** A <code>$</code> was read, and a sentence follows. */
    SENTENCE,
    /**
     * The bytes were counted as a fault and are skipped until the line ends or a sentence starts.
     */
    SKIPPING
  }

  private final Faults faults;
  private final byte[] buffer = new byte[LONGEST];
  private int length;
  private Where where = Where.OUTSIDE;
  private int lastLine = NOT_YET;

  public WireReader(Faults faults) {
    this.faults = faults;
  }

  /**
   * Starts over for a link that was opened anew: half a line from before is dropped, and line
   * numbers begin again.
   */
  public void reset() {
    if (where == Where.SENTENCE) {
      faults.count(Fault.TRUNCATED);
    }
    where = Where.OUTSIDE;
    length = 0;
    lastLine = NOT_YET;
  }

  /** The sentences that end in these bytes. */
  public List<Sentence> accept(byte[] bytes) {
    List<Sentence> sentences = new ArrayList<>();
    for (byte b : bytes) {
      if (b == '$' || b == '\n' || b == '\r') {
        if (where == Where.SENTENCE) {
          finish(sentences);
        }
        where = b == '$' ? Where.SENTENCE : Where.OUTSIDE;
        length = 0;
      } else if (where != Where.SKIPPING) {
        take(b);
      }
    }
    return sentences;
  }

  private void take(byte b) {
    if (where == Where.OUTSIDE || b < 0x20 || b > 0x7E) {
      skip(Fault.GARBAGE);
    } else if (length == LONGEST - 1) { // The $ itself isn't in the buffer.
      skip(Fault.TOO_LONG);
    } else {
      buffer[length++] = b;
    }
  }

  private void skip(Fault fault) {
    faults.count(fault);
    where = Where.SKIPPING;
  }

  private void finish(List<Sentence> sentences) {
    int star = length - CRC_DIGITS - 1;
    if (star < 1 || buffer[star] != '*') {
      faults.count(Fault.TRUNCATED);
    } else if (Crc16.of(buffer, 0, star) != hex(star + 1)) {
      faults.count(Fault.BAD_CRC);
    } else {
      read(star, sentences);
    }
  }

  private void read(int star, List<Sentence> sentences) {
    try {
      SentenceFields fields = new SentenceFields(buffer, 0, star);
      String type = fields.readText(star);
      int line = fields.readInteger(0, LINES - 1);
      countGap(line, type.equals("I") && line == 0);
      Optional<Sentence> sentence =
          type.length() == 1
              ? SentenceDecoder.decode(type.charAt(0), line, fields, length + 1)
              : Optional.empty();
      sentence.ifPresentOrElse(sentences::add, () -> faults.count(Fault.UNKNOWN_SENTENCE));
    } catch (SentenceFields.Bad e) {
      faults.count(Fault.BAD_FIELD);
    }
  }

  private void countGap(int line, boolean boardStarted) {
    if (lastLine != NOT_YET && line != (lastLine + 1) % LINES && !boardStarted) {
      faults.count(Fault.LINE_GAP);
    }
    lastLine = line;
  }

  /** The value of four upper-case hex digits, as the protocol writes them; -1 for anything else. */
  private int hex(int from) {
    int value = 0;
    for (int i = from; i < from + CRC_DIGITS; i++) {
      int digit = "0123456789ABCDEF".indexOf(buffer[i]);
      if (digit < 0) {
        return -1;
      }
      value = value << 4 | digit;
    }
    return value;
  }
}
