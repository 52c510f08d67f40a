package castwell.web.rig;

import castwell.capture.Until;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** The firmware in the rig at its real pace, its serial line at a port of this computer. */
final class RigAtAPort implements AutoCloseable {
  private final Process process;
  private final Path said;

  RigAtAPort(Script script, Path folder) {
    Path port = portIn(folder);
    said = folder.resolve("rig.said");
    try {
      process =
          new ProcessBuilder(
                  Firmware.rig().toString(),
                  Firmware.elf().toString(),
                  script.writeTo(folder.resolve("script")).toString(),
                  "--pty",
                  port.toString())
              .redirectErrorStream(true)
              .redirectOutput(said.toFile())
              .start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A link that is there while the cable is plugged. */
  static Path portIn(Path folder) {
    return folder.resolve("gate-board");
  }

  String said() throws IOException {
    return process.isAlive() ? "it runs" : Files.readString(said);
  }

  @Override
  public void close() {
    process.destroyForcibly();
    try {
      process.waitFor(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
