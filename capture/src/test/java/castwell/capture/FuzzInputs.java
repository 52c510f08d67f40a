package castwell.capture;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What fuzzing begins with and what it has found, under the test resources' folder {@code fuzz},
 * one folder a target. The suite tries all of them again.
 */
public final class FuzzInputs {
  private static final Pattern WANTS_CHECK_SUM = Pattern.compile("\\$([^$\r\n*]*)\\*\\?");

  private FuzzInputs() {}

  public static Stream<Path> of(String target) {
    try (Stream<Path> files =
        Files.list(Path.of(FuzzInputs.class.getResource("/fuzz/" + target).toURI()))) {
      List<Path> inputs = files.sorted().toList();
      if (inputs.isEmpty()) {
        throw new AssertionError("no inputs for " + target);
      }
      return inputs.stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  public static byte[] read(Path input) {
    try {
      return Files.readAllBytes(input);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A folder for as long as this process lives; in memory where there is such a place. */
  public static Path folder() {
    try {
      Path memory = Path.of("/dev/shm");
      Path folder =
          Files.isDirectory(memory)
              ? Files.createTempDirectory(memory, "castwell-fuzz")
              : Files.createTempDirectory("castwell-fuzz");
      Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(folder)));
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void delete(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** No fuzzer guesses check sums: a sentence that ends in {@code *?} gets its own. */
  public static byte[] withCheckSums(byte[] input) {
    return WANTS_CHECK_SUM
        .matcher(new String(input, ISO_8859_1))
        .replaceAll(found -> "\\$%s*%04X".formatted(quoted(found.group(1)), crc(found.group(1))))
        .getBytes(ISO_8859_1);
  }

  private static String quoted(String body) {
    return body.replace("\\", "\\\\");
  }

  /** CRC-16/CCITT-FALSE bit by bit. */
  private static int crc(String body) {
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
