package castwell.capture.rehearsal;

import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A range without hardware: an archer before a board. Knows no clock: it is told what time it is,
 * which must not run backwards.
 */
final class RehearsalRange {
  private static final int LONGEST_REQUEST = 120;
  private static final Pattern AGAIN = Pattern.compile("R,([0-9]{1,5}),([0-9]{1,9})");

  private final PretendBoard board;
  private final PretendArcher archer;
  private final StringBuilder request = new StringBuilder();

  RehearsalRange(
      RehearsalSettings settings, Supplier<Optional<RehearsalTags>> tags, double startMicros) {
    this.board = new PretendBoard(settings, startMicros);
    this.archer = new PretendArcher(settings, tags, startMicros);
  }

  /** What the host receives, up to now. */
  byte[] due(double nowMicros) {
    live(nowMicros);
    return board.due(nowMicros);
  }

  private void live(double nowMicros) {
    while (archer.nextMicros() <= nowMicros) {
      board.plan(archer.shoot());
    }
    board.live(nowMicros);
  }

  /** When there may be more, unless the host says something. */
  double nextMicros() {
    return Math.min(archer.nextMicros(), board.nextMicros());
  }

  /** What the host says. */
  void hear(byte[] bytes, double nowMicros) {
    live(nowMicros);
    for (byte value : bytes) {
      if (value != '\n') {
        request.append((char) value);
        request.setLength(Math.min(request.length(), LONGEST_REQUEST));
        continue;
      }
      answer(request.toString().strip(), nowMicros);
      request.setLength(0);
    }
  }

  private void answer(String line, double nowMicros) {
    Matcher again = AGAIN.matcher(line);
    if (line.equals("?")) {
      board.sayIdentity(nowMicros);
    } else if (again.matches()) {
      board.sayAgain(nowMicros, Integer.parseInt(again.group(1)), Integer.parseInt(again.group(2)));
    }
  }
}
