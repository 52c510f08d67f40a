package castwell.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * What fuzzing begins with and what it has found, under the test resources' folder {@code fuzz},
 * one folder a target. The suite tries all of them again.
 */
public final class FuzzInputs {
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
}
