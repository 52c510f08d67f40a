package castwell.web.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The board's firmware and the rig that runs it, built once from their sources. */
final class Firmware {
  private static final Path NOTES = Path.of("..", "hardware-notes").toAbsolutePath().normalize();
  private static final Path BUILD = Path.of("target", "rig").toAbsolutePath();
  private static final Firmware BUILT = build();

  private final String said;

  private Firmware(String said) {
    this.said = said;
  }

  private static Firmware build() {
    try {
      Files.createDirectories(BUILD);
      try (FileChannel channel =
              FileChannel.open(
                  BUILD.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
          FileLock alone = channel.lock()) { // the suite runs in several processes
        assertThat(alone.isValid()).isTrue();
        return new Firmware(make("firmware") + make("rig"));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String make(String what) {
    Path build = BUILD.resolve(what);
    return run("make", "--silent", "-C", NOTES.resolve(what).toString(), "BUILD=" + build);
  }

  /** What the compilers said: nothing, where they had nothing to warn of. */
  static String said() {
    return BUILT.said;
  }

  static Path elf() {
    return BUILT.in("firmware").resolve("gate-board.elf");
  }

  static Path rig() {
    return BUILT.in("rig").resolve("rig");
  }

  private Path in(String what) {
    return BUILD.resolve(what);
  }

  /** How much stack each function takes, as the compiler told. */
  static List<String> stackUses() {
    List<String> lines = new ArrayList<>();
    try (var files = Files.newDirectoryStream(elf().getParent(), "*.su")) {
      for (Path file : files) {
        lines.addAll(Files.readAllLines(file));
      }
      return lines;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Runs a command that must do well, and returns all it says. */
  static String run(String... command) {
    try {
      Path said = Files.createTempFile("said", ".txt");
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(said.toFile())
              .start();
      assertThat(process.waitFor(1, TimeUnit.HOURS)).as(String.join(" ", command)).isTrue();
      String all = Files.readString(said);
      Files.delete(said);
      assertThat(process.exitValue()).as(String.join(" ", command) + "\n" + all).isZero();
      return all;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
