package castwell.capture.rehearsal;

import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A range without hardware: a pretended archer shooting through the gates of a pretended board. It
 * has no clock but is told the time, which must not run backwards.
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

  /** Takes out the bytes that the host receives by now. */
  byte[] takeDue(double nowMicros) {
    advance(nowMicros);
    return board.takeDue(nowMicros);
  }

  private void advance(double nowMicros) {
    while (archer.nextMicros() <= nowMicros) {
      board.plan(archer.shoot());
    }
    board.advance(nowMicros);
  }

  /** When there may be more bytes, unless the host says something before. */
  double nextMicros() {
    return Math.min(archer.nextMicros(), board.nextMicros());
  }

  /** Takes in what the host says. */
  void hear(byte[] bytes, double nowMicros) {
    advance(nowMicros);
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
