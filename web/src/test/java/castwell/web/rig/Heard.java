package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.wire.Crc16;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/**
 * One line that the board said, its check sum verified.
 *
 * @param micros when its last byte had come
 * @param fields the first is the type, the second the line's number
 */
record Heard(long micros, List<String> fields) {
  private static final int LONGEST = 120;

  static Heard of(String line) {
    int space = line.indexOf(' ');
    String said = line.substring(space + 1);
    assertThat(said).matches("\\$[A-Z](,[A-Za-z0-9._-]*)+\\*[0-9A-F]{4}");
    assertThat(said.length() + 2).isLessThanOrEqualTo(LONGEST);
    String body = said.substring(1, said.indexOf('*'));
    byte[] bytes = body.getBytes(StandardCharsets.US_ASCII);
    assertThat(String.format(Locale.ROOT, "%04X", Crc16.of(bytes, 0, bytes.length)))
        .as(line)
        .isEqualTo(said.substring(said.indexOf('*') + 1));
    return new Heard(Long.parseLong(line.substring(0, space)), List.of(body.split(",", -1)));
  }

  char type() {
    return fields.get(0).charAt(0);
  }

  String text(int field) {
    return fields.get(field);
  }

  long number(int field) {
    return Long.parseLong(fields.get(field));
  }

  @Override
  public String toString() {
    return micros + " " + String.join(",", fields);
  }
}
