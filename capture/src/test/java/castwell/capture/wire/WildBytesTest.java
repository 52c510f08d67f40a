package castwell.capture.wire;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.Seed;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Random and mutated bytes: nothing throws, no intact sentence is lost, none is made up. Two
 * million, or as many as {@code -Dcastwell.bytes=100000000} says.
 */
class WildBytesTest {
  private static final long BYTES = Long.getLong("castwell.bytes", 2_000_000);
  private static final int A_PART = 2_000_000;

  private final long seed = Seed.of(WildBytesTest.class);
  private final Random random = new Random(seed);
  private final ByteArrayOutputStream stream = new ByteArrayOutputStream();
  private final List<Sentence> intact = new ArrayList<>();

  @Test
  void readsExactlyWhatTheSlowReaderFinds() {
    for (long done = 0; done < BYTES; done += A_PART) {
      stream.reset();
      intact.clear();
      readsAPart();
    }
  }

  private void readsAPart() {
    while (stream.size() < A_PART) {
      switch (random.nextInt(6)) {
        case 0 -> write(endless(random.nextInt(300)));
        case 1 -> write(noise(random.nextInt(300)));
        case 2 -> write(mutated(Lines.bytes(Lines.line(body()))));
        case 3 -> write(Lines.bytes(Lines.line(wildBody())));
        default -> sayIntact();
      }
    }
    write(Lines.bytes("\n"));
    byte[] all = stream.toByteArray();
    Heard heard = new Heard();
    for (int from = 0; from < all.length; ) {
      int to = Math.min(all.length, from + 1 + random.nextInt(200));
      heard.hear(Arrays.copyOfRange(all, from, to));
      from = to;
    }
    assertThat(heard.sentences).as("seed " + seed).isEqualTo(SlowReader.read(text(all)));
    assertThat(heard.sentences).as("seed " + seed).containsSubsequence(intact);
    assertThat(intact.size()).isGreaterThan(5_000);
    assertThat(heard.faults.all())
        .containsKeys(
            Fault.GARBAGE,
            Fault.TRUNCATED,
            Fault.TOO_LONG,
            Fault.BAD_CRC,
            Fault.BAD_FIELD,
            Fault.UNKNOWN_SENTENCE,
            Fault.LINE_GAP);
  }

  private void sayIntact() {
    String line = Lines.line(body());
    write(Lines.bytes(line));
    List<Sentence> said = SlowReader.read(line);
    assertThat(said).as(line).hasSize(1);
    intact.addAll(said);
  }

  private void write(byte[] bytes) {
    stream.write(bytes, 0, bytes.length);
  }

  private static String text(byte[] bytes) {
    return new String(bytes, ISO_8859_1);
  }

  private byte[] noise(int length) {
    byte[] noise = new byte[length];
    random.nextBytes(noise);
    if (random.nextBoolean()) {
      for (int i = 0; i < length; i++) {
        noise[i] = (byte) "$*,\r\nEHILMK0123456789ABCDEF".charAt(random.nextInt(27));
      }
    }
    return noise;
  }

  private static byte[] endless(int length) {
    return Lines.bytes("$" + "x".repeat(length));
  }

  /** Flips, drops, doubles or inserts bytes. */
  private byte[] mutated(byte[] line) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte b : line) {
      switch (random.nextInt(60)) {
        case 0 -> out.write(b ^ 1 << random.nextInt(8));
        case 1 -> {
          // dropped
        }
        case 2 -> out.writeBytes(new byte[] {b, b});
        case 3 -> out.writeBytes(new byte[] {(byte) random.nextInt(256), b});
        default -> out.write(b);
      }
    }
    return out.toByteArray();
  }

  /** Right by its CRC, its fields changed at random. */
  private String wildBody() {
    String body = text(mutated(Lines.bytes(body()))).replaceAll("[^ -#%-~]", "");
    return random.nextInt(4) == 0 ? body.replaceAll("\\d+", "") : body;
  }

  private String body() {
    int line = random.nextInt(65536);
    int boot = random.nextInt(65536);
    long ticks = random.nextLong(1L << 32);
    int edge = 1 + random.nextInt(Integer.MAX_VALUE);
    return switch (random.nextInt(6)) {
      case 0 -> "I,%d,1,sim-1.0,gate-1,%d,2000000,2,%d,,64,P".formatted(line, boot, edge - 999);
      case 1 ->
          "H,%d,%d,%d,%d,%d,0,0,%s,%d,,5012,-2150,,5510"
              .formatted(line, boot, ticks << 16, boot, edge, "CB", random.nextInt(1024));
      case 2 -> "L,%d,%d,A,%d,%d,44".formatted(line, boot, ticks, ticks);
      case 3 -> "M,%d,%d,%d,%d".formatted(line, boot, edge, edge);
      case 4 -> "K,%d,%d,%d,L,%d".formatted(line, boot, 1 + random.nextInt(9), ticks);
      default ->
          "E,%d,%d,%d,%c,%c,%d,%d"
              .formatted(
                  line,
                  boot,
                  edge,
                  "AB".charAt(random.nextInt(2)),
                  "BCG".charAt(random.nextInt(3)),
                  ticks,
                  random.nextInt(40));
    };
  }
}
