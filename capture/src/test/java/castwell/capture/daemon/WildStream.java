package castwell.capture.daemon;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;

/**
 * A board that shoots an arrow every five seconds, on a wire where anything happens: lines are
 * spoilt, and wild bytes stand between them. Two ticks a microsecond.
 */
final class WildStream {
  private static final long CYCLE_MICROS = 5_000_000;
  private static final double SPOILT = 0.08;

  private final Random random;
  private final boolean forged;
  private final List<Portion> portions = new ArrayList<>();
  private final List<Arrow> arrows = new ArrayList<>();
  private final Set<String> said = new HashSet<>();
  private final List<String> recent = new ArrayList<>();
  private int size;
  private int line;
  private int edges;

  /** Bytes that come at once. */
  record Portion(long micros, byte[] bytes) {}

  /** An arrow that really went through, and its edges as the board told them. */
  record Arrow(double mps, List<IntactEdge> edges) {}

  /**
   * @param forged whether wild sentences may bear a right check sum
   */
  WildStream(Random random, boolean forged, int bytes) {
    this.random = random;
    this.forged = forged;
    for (long cycle = 0; size < bytes; cycle++) {
      play(cycle * CYCLE_MICROS);
    }
  }

  List<Portion> portions() {
    return portions;
  }

  List<Arrow> arrows() {
    return arrows;
  }

  int size() {
    return size;
  }

  /** Whether chance gave what no board said a right check sum. */
  boolean isForgedByChance() {
    return !forged && !said.containsAll(IntactEdge.sentences(all()));
  }

  byte[] all() {
    ByteArrayOutputStream all = new ByteArrayOutputStream(size);
    portions.forEach(portion -> all.writeBytes(portion.bytes()));
    return all.toByteArray();
  }

  private void play(long start) {
    if (start % (12 * CYCLE_MICROS) == 0) {
      intact(start + 1_000, "I,%d,1,sim-1,wild,7,2000000,2,0,0,64,P".formatted(next()));
    }
    for (int beat = 0; beat < 5; beat++) {
      long micros = start + 200_000 + beat * 1_000_000L;
      String body = "H,%d,7,%d,0,%d,0,0,CC,812,807,5012,,,".formatted(next(), 2 * micros, edges);
      if (beat == 3 || random.nextDouble() >= SPOILT) { // one after each arrow counts its edges
        intact(micros, body);
      } else {
        spoilt(micros, body);
      }
      if (beat == 2) {
        arrow(micros + 400_000);
      }
    }
  }

  private void arrow(long micros) {
    double mps = 40 + 30 * random.nextDouble();
    double a = 2 * micros;
    double perMetre = 2e6 / mps;
    double[] ticks = {a, a + 0.6096 * perMetre, a + 0.7 * perMetre, a + (0.6096 + 0.7) * perMetre};
    List<IntactEdge> told = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      long stamp = Math.round(ticks[i]);
      IntactEdge edge =
          new IntactEdge(
              7, ++edges, i % 2 == 0 ? "A" : "B", i < 2 ? "B" : "C", stamp & 0xFFFF_FFFFL, 0);
      told.add(edge);
      String body =
          "E,%d,7,%d,%s,%s,%d,0"
              .formatted(next(), edge.number(), edge.gate(), edge.kind(), edge.ticks());
      if (random.nextDouble() >= SPOILT) {
        intact(stamp / 2 + 500, body);
      } else {
        spoilt(stamp / 2 + 500, body);
      }
    }
    arrows.add(new Arrow(mps, told));
  }

  private int next() {
    return line++ & 0xFFFF;
  }

  private void intact(long micros, String body) {
    wild(micros);
    said.add(body);
    String sentence = sentence(body);
    put(micros, sentence + new String[] {"\r\n", "\n", "\r"}[random.nextInt(3)]);
    recent.add(sentence);
    if (recent.size() > 12) {
      recent.remove(0);
    }
  }

  private void spoilt(long micros, String body) {
    wild(micros);
    String spoilt = sentence(body);
    while (spoilt.contains(sentence(body))) {
      spoilt = mutated(sentence(body)); // until it isn't there any more
    }
    put(micros, spoilt + "\n");
  }

  private void wild(long micros) {
    while (random.nextInt(3) > 0) {
      put(micros, garbage());
    }
  }

  private String garbage() {
    return switch (random.nextInt(forged ? 8 : 7)) {
      case 0 -> noise();
      case 1 -> "$" + "x".repeat(random.nextInt(400));
      case 2 -> mutated(old()) + "\r\n";
      case 3 -> spliced() + "\n";
      case 4 -> wrongCheckSum(old()) + "\n";
      case 5 -> changedCase(old()) + "\n";
      case 6 -> old().substring(0, random.nextInt(old().length())).replace("$", "") + "\0\n";
      default -> sentence(wildFields(old())) + "\r\n";
    };
  }

  private String old() {
    return recent.isEmpty() ? "$M,1,7,1,2*0000" : recent.get(recent.size() - 1);
  }

  private String noise() {
    byte[] noise = new byte[random.nextInt(200)];
    random.nextBytes(noise);
    if (random.nextBoolean()) {
      for (int i = 0; i < noise.length; i++) {
        noise[i] = (byte) "$*,\r\nEHILMK0123456789ABCDEF".charAt(random.nextInt(27));
      }
    }
    return new String(noise, ISO_8859_1);
  }

  /** Flips, drops, doubles, inserts bytes. */
  private String mutated(String sentence) {
    StringBuilder out = new StringBuilder(sentence);
    for (int i = 1 + random.nextInt(4); i > 0; i--) {
      int at = random.nextInt(out.length());
      switch (random.nextInt(5)) {
        case 0 -> out.setCharAt(at, (char) (out.charAt(at) ^ 1 << random.nextInt(8)));
        case 1 -> out.deleteCharAt(at);
        case 2 -> out.insert(at, out.charAt(at));
        case 3 -> out.insert(at, (char) random.nextInt(256));
        default -> out.setCharAt(at, '\0');
      }
    }
    return out.toString();
  }

  /** The head of one with the tail of another. */
  private String spliced() {
    String head = recent.isEmpty() ? old() : recent.get(random.nextInt(recent.size()));
    String tail = old();
    return head.substring(0, random.nextInt(head.length()))
        + tail.substring(random.nextInt(tail.length()));
  }

  private String wrongCheckSum(String sentence) {
    String body = sentence.substring(0, sentence.length() - 4);
    return body + "%04X".formatted(random.nextInt(0x10000));
  }

  private static String changedCase(String sentence) {
    return sentence.toLowerCase(Locale.ROOT);
  }

  /** Fields that a board never says, or another board would. */
  private String wildFields(String sentence) {
    String[] fields = sentence.substring(1, sentence.length() - 5).split(",", -1);
    for (int i = 1 + random.nextInt(3); i > 0; i--) {
      fields[random.nextInt(fields.length)] =
          switch (random.nextInt(8)) {
            case 0 -> "";
            case 1 -> "-1";
            case 2 -> String.valueOf(random.nextInt(12));
            case 3 -> String.valueOf(random.nextInt(Integer.MAX_VALUE));
            case 4 -> String.valueOf(random.nextLong(1L << 48));
            case 5 -> String.valueOf("ABCEGHIKLMS".charAt(random.nextInt(11)));
            case 6 -> "2147483647";
            default -> "4294967295";
          };
    }
    String body = String.join(",", fields);
    return body.length() > 113 ? body.substring(0, 113) : body;
  }

  private static String sentence(String body) {
    return "$%s*%04X".formatted(body, IntactEdge.crc(body));
  }

  /** In pieces, as a port hands them on. */
  private void put(long micros, String text) {
    byte[] bytes = text.getBytes(ISO_8859_1);
    for (int from = 0; from < bytes.length; ) {
      int to = Math.min(bytes.length, from + 1 + random.nextInt(100));
      portions.add(new Portion(micros, Arrays.copyOfRange(bytes, from, to)));
      from = to;
    }
    size += bytes.length;
  }
}
