package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An edge that an intact sentence told, found without any code of the program: an oracle. Source:
 * the board's language, hardware-notes/serial-protocol.md.
 */
record IntactEdge(int boot, int number, String gate, String kind, long ticks, long late) {
  private static final int LONGEST = 120;
  private static final long MAX31 = (1L << 31) - 1;

  /** All of them, in the order in which they came. */
  static List<IntactEdge> in(byte[] bytes) {
    return sentences(bytes).stream().map(IntactEdge::told).flatMap(Optional::stream).toList();
  }

  /** What stands between the dollar and the star of every intact sentence. */
  static List<String> sentences(byte[] bytes) {
    String text = new String(bytes, ISO_8859_1);
    List<String> sentences = new ArrayList<>();
    for (int at = text.indexOf('$'); at >= 0; at = text.indexOf('$', at + 1)) {
      int end = at + 1;
      while (end < text.length() && end - at <= LONGEST && "$\r\n".indexOf(text.charAt(end)) < 0) {
        end++;
      }
      int star = end - 5;
      if (end < text.length() && end - at <= LONGEST && star > at + 1) {
        String body = text.substring(at + 1, star);
        if (body.chars().allMatch(c -> c >= 0x20 && c <= 0x7E)
            && text.substring(star, end).equals("*%04X".formatted(crc(body)))) {
          sentences.add(body);
        }
      }
    }
    return sentences;
  }

  /** The same whatever it says of its own lateness, by which edges aren't told apart. */
  IntactEdge named() {
    return new IntactEdge(boot, number, gate, kind, ticks, 0);
  }

  private static Optional<IntactEdge> told(String body) {
    String[] fields = body.split(",", -1);
    boolean isEdge =
        fields.length >= 8
            && fields[0].equals("E")
            && isWithin(fields[1], 0, 0xFFFF)
            && isWithin(fields[2], 0, 0xFFFF)
            && isWithin(fields[3], 1, MAX31)
            && fields[4].matches("[AB]")
            && fields[5].matches("[BCG]")
            && isWithin(fields[6], 0, 0xFFFF_FFFFL)
            && (fields[7].isEmpty() || isWithin(fields[7], 0, MAX31));
    return isEdge ? Optional.of(of(fields)) : Optional.empty();
  }

  private static IntactEdge of(String[] fields) {
    return new IntactEdge(
        Integer.parseInt(fields[2]),
        Integer.parseInt(fields[3]),
        fields[4],
        fields[5],
        Long.parseLong(fields[6]),
        fields[7].isEmpty() ? 0 : Long.parseLong(fields[7]));
  }

  private static boolean isWithin(String field, long least, long most) {
    if (!field.matches("-?\\d{1,18}")) {
      return false;
    }
    long value = Long.parseLong(field);
    return value >= least && value <= most;
  }

  /** CRC-16/CCITT-FALSE bit by bit: polynomial 1021, initial FFFF, not reflected. */
  static int crc(String body) {
    int crc = 0xFFFF;
    for (int i = 0; i < body.length(); i++) {
      for (int bit = 7; bit >= 0; bit--) {
        boolean out = (crc >> 15 & 1) != (body.charAt(i) >> bit & 1);
        crc = crc << 1 & 0xFFFF ^ (out ? 0x1021 : 0);
      }
    }
    return crc;
  }
}
