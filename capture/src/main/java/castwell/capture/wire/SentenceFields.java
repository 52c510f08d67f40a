package castwell.capture.wire;

import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;

/** The comma-separated fields of one sentence, read in order. */
final class SentenceFields {

  /** A field isn't what the protocol says. */
  static final class Bad extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Bad() {
      super(null, null, false, false);
    }
  }

  private final byte[] bytes;
  private final int end;
  private int next;

  /**
   * @param from the index of the first field's first byte
   * @param end the index just past the last field
   */
  SentenceFields(byte[] bytes, int from, int end) {
    this.bytes = bytes;
    this.next = from;
    this.end = end;
  }

  String readText(int longest) {
    int from = next;
    int to = passField();
    if (to == from || to - from > longest) {
      throw new Bad();
    }
    return new String(bytes, from, to - from, StandardCharsets.US_ASCII);
  }

  /** Reads a name, which is 1 to 16 characters of A-Z a-z 0-9 . _ - */
  String readName() {
    String name = readText(16);
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (!(c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c >= '0' && c <= '9')
          && ".-_".indexOf(c) < 0) {
        throw new Bad();
      }
    }
    return name;
  }

  char readLetter() {
    return readText(1).charAt(0);
  }

  int readInteger(int least, int most) {
    return (int) readInteger((long) least, most);
  }

  long readInteger(long least, long most) {
    int from = next;
    int to = passField();
    boolean negative = from < to && bytes[from] == '-';
    int digit = negative ? from + 1 : from;
    if (digit == to || to - digit > 18) {
      throw new Bad();
    }
    long value = 0;
    for (; digit < to; digit++) {
      int d = bytes[digit] - '0';
      if (d < 0 || d > 9) {
        throw new Bad();
      }
      value = value * 10 + d;
    }
    value = negative ? -value : value;
    if (value < least || value > most) {
      throw new Bad();
    }
    return value;
  }

  /**
   * Reads an integer; the result is empty where the field is, since the board doesn't know the
   * value.
   */
  OptionalInt readIfKnown(int least, int most) {
    return isEmpty() ? skip() : OptionalInt.of(readInteger(least, most));
  }

  boolean isEmpty() {
    return next >= end ? next == end : bytes[next] == ',';
  }

  private OptionalInt skip() {
    passField();
    return OptionalInt.empty();
  }

  /** Steps past the field and its comma, and returns where the field ended. */
  private int passField() {
    if (next > end) {
      throw new Bad();
    }
    int to = next;
    while (to < end && bytes[to] != ',') {
      to++;
    }
    next = to + 1;
    return to;
  }
}
