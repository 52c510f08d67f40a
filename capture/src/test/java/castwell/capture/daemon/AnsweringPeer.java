package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.US_ASCII;

import castwell.capture.device.PtyPeer;
import castwell.capture.wire.Crc16;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A board on a real pseudo-terminal that says what a recording holds, keeps the last 64 of its
 * edges, and answers {@code ?} and {@code R}. What it says while the cable is out is lost, but for
 * the edges it keeps.
 */
final class AnsweringPeer implements AutoCloseable {
  private static final int KEEP = 64;
  private static final Pattern SENTENCE = Pattern.compile("\\$([IEH]),\\d+,(.*)\\*([0-9A-F]{4})");

  private final PtyPeer pty;
  private final TreeMap<Integer, String> kept = new TreeMap<>();
  private String identity = "";
  private int boot = -1;
  private int highest;

  /** Not 0: that is how a board begins that was just switched on. */
  private int line = 40_000;

  AnsweringPeer(Path path) {
    pty = PtyPeer.at(path, this::answer);
  }

  Path path() {
    return pty.path();
  }

  PtyPeer pty() {
    return pty;
  }

  void say(byte[] recorded) {
    live(recorded);
    byte[] line = Arrays.copyOf(recorded, recorded.length + 2);
    line[recorded.length] = '\r';
    line[recorded.length + 1] = '\n';
    pty.write(line);
  }

  /** What happens to the board as it says this, whether or not anyone hears it. */
  synchronized void live(byte[] recorded) {
    Matcher sentence = SENTENCE.matcher(new String(recorded, ISO_8859_1));
    if (!sentence.matches() || !isSound(recorded)) {
      return;
    }
    String[] fields = sentence.group(2).split(",");
    switch (sentence.group(1)) {
      case "I" -> {
        identity = sentence.group(2);
        startIfOther(Integer.parseInt(fields[3]));
      }
      case "E" -> {
        startIfOther(Integer.parseInt(fields[0]));
        int number = Integer.parseInt(fields[1]);
        kept.put(number, sentence.group(2));
        highest = Math.max(highest, number);
        if (kept.size() > KEEP) {
          kept.pollFirstEntry();
        }
      }
      default -> {
        startIfOther(Integer.parseInt(fields[0]));
        highest = Math.max(highest, Integer.parseInt(fields[3]));
      }
    }
  }

  /** Boot and number of the edge that a line tells of, if it tells of one. */
  static Optional<String> edgeName(byte[] recorded) {
    Matcher sentence = SENTENCE.matcher(new String(recorded, ISO_8859_1));
    return sentence.matches() && sentence.group(1).equals("E") && isSound(recorded)
        ? Optional.of(sentence.group(2).replaceFirst("^(\\d+,\\d+),.*", "$1"))
        : Optional.empty();
  }

  private static boolean isSound(byte[] recorded) {
    int star = recorded.length - 5;
    return Crc16.of(recorded, 1, star)
        == Integer.parseInt(new String(recorded, star + 1, 4, US_ASCII), 16);
  }

  /** Its memory doesn't outlive a start. */
  private void startIfOther(int other) {
    if (other != boot) {
      boot = other;
      highest = 0;
      kept.clear();
    }
  }

  private synchronized String answer(String asked) {
    String[] words = asked.split(",");
    if (words[0].equals("R") && Integer.parseInt(words[1]) == boot) {
      return edgesFrom(Integer.parseInt(words[2]));
    }
    String ofThisBoot = identity.replaceFirst("^(1,[^,]*,[^,]*,)\\d+", "$1" + boot);
    return identity.isEmpty() ? "" : sentence("I", ofThisBoot);
  }

  private String edgesFrom(int first) {
    StringBuilder missing = new StringBuilder();
    StringBuilder edges = new StringBuilder();
    for (int number = first; number <= highest; number++) {
      if (kept.containsKey(number)) {
        edges.append(sentence("E", kept.get(number)));
      } else {
        missing.append(sentence("M", boot + "," + number + "," + number));
      }
    }
    return missing.append(edges).toString();
  }

  private String sentence(String type, String fields) {
    String body = type + "," + line + "," + fields;
    line = line + 1 & 0xFFFF;
    byte[] bytes = body.getBytes(US_ASCII);
    return "$" + body + String.format(Locale.ROOT, "*%04X\r\n", Crc16.of(bytes, 0, bytes.length));
  }

  @Override
  public void close() {
    pty.close();
  }
}
