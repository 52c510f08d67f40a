package castwell.capture.rehearsal;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import castwell.capture.wire.Crc16;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Listens to a rehearsal on a clock of its own, and takes its lines apart. */
final class Listening {
  private static final double STEP_MICROS = 10_000;

  /**
   * @param fields the type, the line number and all that follows
   */
  record Heard(double micros, String[] fields) {
    char type() {
      return fields[0].charAt(0);
    }

    long number(int field) {
      return Long.parseLong(fields[field]);
    }
  }

  private final RehearsalRange range;
  private final StringBuilder text = new StringBuilder();
  private final List<Heard> heard = new ArrayList<>();
  private double nowMicros;
  private int bad;

  Listening(RehearsalSettings settings, Optional<RehearsalTags> tags) {
    range = new RehearsalRange(settings, () -> tags, 0);
  }

  Listening forSeconds(double seconds) {
    double until = nowMicros + seconds * 1e6;
    while (nowMicros < until) {
      nowMicros += STEP_MICROS;
      text.append(new String(range.takeDue(nowMicros), ISO_8859_1));
      for (int end = text.indexOf("\n"); end >= 0; end = text.indexOf("\n")) {
        take(text.substring(0, end));
        text.delete(0, end + 1);
      }
    }
    return this;
  }

  void say(String line) {
    range.hear((line + "\n").getBytes(ISO_8859_1), nowMicros);
  }

  private void take(String line) {
    int star = line.length() - 6;
    boolean whole = star > 0 && line.startsWith("$") && line.startsWith("*", star);
    if (!whole) {
      bad++;
      return;
    }
    int crc = Crc16.of(line.getBytes(ISO_8859_1), 1, star);
    if (!line.substring(star + 1).equals("%04X\r".formatted(crc))) {
      bad++;
      return;
    }
    heard.add(new Heard(nowMicros, line.substring(1, star).split(",", -1)));
  }

  List<Heard> all() {
    return heard;
  }

  List<Heard> of(char type) {
    return heard.stream().filter(h -> h.type() == type).toList();
  }

  /** Lines that were no whole sentence. */
  int bad() {
    return bad;
  }

  void forget() {
    heard.clear();
  }
}
