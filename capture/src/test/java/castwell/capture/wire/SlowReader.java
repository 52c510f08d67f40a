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
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The protocol once more, as regular expressions over the whole text: an oracle, not a reader. */
final class SlowReader {
  private static final String D = "(-?\\d{1,18})";
  private static final String Q = "(-?\\d{1,18}|)";
  private static final String NAME = "([A-Za-z0-9._-]{1,16})";
  private static final Pattern SENTENCE =
      Pattern.compile("\\$([ -#%-~]{1,119})\\*([0-9A-F]{4})(?=[$\r\n])");
  private static final Pattern IDENTITY =
      fields("I", D, D, NAME, NAME, D, D, Q, Q, Q, Q, "([^,]?)");
  private static final Pattern EDGE = fields("E", D, D, D, "([AB])", "([BCG])", D, Q);
  private static final Pattern HEARTBEAT =
      fields("H", D, D, D, Q, D, Q, Q, "([BC]{2}|)", Q, Q, Q, Q, Q, Q);
  private static final Pattern LOSS = fields("L", D, D, "([AB])", D, D, D);
  private static final Pattern MISSING = fields("M", D, D, D, D);
  private static final Pattern KEY = fields("K", D, D, D, "([SL])", D);
  private static final long MAX31 = (1L << 31) - 1;
  private static final long MAX32 = (1L << 32) - 1;
  private static final long MAX48 = (1L << 48) - 1;

  private boolean inRange = true;

  private SlowReader() {}

  private static Pattern fields(String... fields) {
    return Pattern.compile(String.join(",", fields) + "(?:,.*)?");
  }

  static List<Sentence> read(String text) {
    List<Sentence> sentences = new ArrayList<>();
    Matcher found = SENTENCE.matcher(text);
    while (found.find()) {
      String body = found.group(1);
      boolean fits = found.group().length() <= 120;
      if (fits && Integer.parseInt(found.group(2), 16) == Lines.crc(body)) {
        SlowReader reader = new SlowReader();
        reader.body(body).filter(sentence -> reader.inRange).ifPresent(sentences::add);
      }
    }
    return sentences;
  }

  private Optional<Sentence> body(String body) {
    return identity(body)
        .or(() -> edge(body))
        .or(() -> heartbeat(body))
        .or(() -> match(LOSS, body).map(this::loss))
        .or(() -> match(MISSING, body).map(this::missing))
        .or(() -> match(KEY, body).map(this::key));
  }

  private static Optional<MatchResult> match(Pattern pattern, String body) {
    Matcher matcher = pattern.matcher(body);
    return matcher.matches() ? Optional.of(matcher.toMatchResult()) : Optional.empty();
  }

  private Optional<Sentence> identity(String body) {
    return match(IDENTITY, body)
        .map(
            m -> {
              known(m, 7, 0, 0xFFFF);
              String cause = m.group(11);
              return new Identity(
                  u16(m, 1),
                  (int) number(m, 2, 1, 0xFFFF),
                  m.group(3),
                  m.group(4),
                  u16(m, 5),
                  (int) number(m, 6, 1, MAX31),
                  known(m, 8, -MAX31, MAX31).orElse(0),
                  known(m, 9, -MAX31, MAX31).orElse(0),
                  known(m, 10, 0, MAX31).orElse(0),
                  cause.isEmpty() ? 'U' : cause.charAt(0));
            });
  }

  private Optional<Sentence> edge(String body) {
    return match(EDGE, body)
        .map(
            m ->
                new EdgeSeen(
                    u16(m, 1),
                    u16(m, 2),
                    (int) number(m, 3, 1, MAX31),
                    Gate.valueOf(m.group(4)),
                    EdgeKind.ofLetter(m.group(5).charAt(0)),
                    number(m, 6, 0, MAX32),
                    known(m, 7, 0, MAX31).orElse(0)));
  }

  private Optional<Sentence> heartbeat(String body) {
    return match(HEARTBEAT, body)
        .map(
            m ->
                new Heartbeat(
                    u16(m, 1),
                    u16(m, 2),
                    number(m, 3, 0, MAX48),
                    known(m, 4, 0, MAX31).orElse(0),
                    (int) number(m, 5, 0, MAX31),
                    known(m, 6, 0, MAX31).orElse(0),
                    known(m, 7, 0, MAX31).orElse(0),
                    m.group(8).isEmpty()
                        ? Optional.empty()
                        : Optional.of(
                            new Levels(m.group(8).startsWith("B"), m.group(8).endsWith("B"))),
                    new Surroundings(
                        known(m, 9, 0, 1023),
                        known(m, 10, 0, 1023),
                        known(m, 11, 0, MAX31),
                        known(m, 12, -32768, 32767),
                        known(m, 13, -32768, 32767),
                        known(m, 14, 0, 10_000)),
                    Lines.line(body).length()));
  }

  private Sentence loss(MatchResult m) {
    return new Loss(
        u16(m, 1),
        u16(m, 2),
        Gate.valueOf(m.group(3)),
        number(m, 4, 0, MAX32),
        number(m, 5, 0, MAX32),
        number(m, 6, 0, MAX32));
  }

  private Sentence missing(MatchResult m) {
    int first = (int) number(m, 3, 1, MAX31);
    return new Missing(u16(m, 1), u16(m, 2), first, (int) number(m, 4, first, MAX31));
  }

  private Sentence key(MatchResult m) {
    Press press = m.group(4).equals("S") ? Press.SHORT : Press.LONG;
    return new Key(u16(m, 1), u16(m, 2), (int) number(m, 3, 1, 9), press, number(m, 5, 0, MAX32));
  }

  private int u16(MatchResult m, int group) {
    return (int) number(m, group, 0, 0xFFFF);
  }

  private OptionalInt known(MatchResult m, int group, long least, long most) {
    return m.group(group).isEmpty()
        ? OptionalInt.empty()
        : OptionalInt.of((int) number(m, group, least, most));
  }

  private long number(MatchResult m, int group, long least, long most) {
    long value = Long.parseLong(m.group(group));
    inRange &= value >= least && value <= most;
    return value;
  }
}
