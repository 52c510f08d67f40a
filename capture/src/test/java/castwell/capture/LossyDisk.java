package castwell.capture;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * A disk whose power is cut: then it holds what was synced, and any part of what was not. A file
 * system of our own, <code>lossy-disk.c</code>; it needs <code>/dev/fuse</code> and the right to
 * mount.
 */
public final class LossyDisk implements AutoCloseable {
  /** Cut only when told to. */
  public static final int NO_END = 0;

  private final Process process;
  private final BufferedReader says;
  private final Path mount;
  private final Path after;

  private LossyDisk(Process process, Path mount, Path after) throws IOException {
    this.process = process;
    this.says = process.inputReader();
    this.mount = mount;
    this.after = after;
    String said = says.readLine();
    if (!"mounted".equals(said)) {
      throw new AssertionError("no disk (" + said + "): is there /dev/fuse, and a right to mount?");
    }
  }

  /**
   * Builds the file system.
   *
   * @return the program
   */
  public static Path build(Path folder) throws IOException {
    Path source = folder.resolve("lossy-disk.c");
    try (InputStream in = LossyDisk.class.getResourceAsStream("lossy-disk.c")) {
      Files.write(source, in.readAllBytes());
    }
    Path program = folder.resolve("lossy-disk");
    String command =
        "cc -O2 -Wall $(pkg-config --cflags fuse3) -o %s %s $(pkg-config --libs fuse3)"
            .formatted(program, source);
    Process compiler = new ProcessBuilder("sh", "-c", command).redirectErrorStream(true).start();
    String said = new String(compiler.getInputStream().readAllBytes());
    if (compiler.onExit().join().exitValue() != 0) {
      throw new AssertionError("needs gcc, pkg-config, libfuse3-dev and fuse3: " + said);
    }
    return program;
  }

  /**
   * @param before a folder with what it holds at first, which stays as it is
   * @param after made, for what it holds when the power is gone
   * @param changes it does so many, then the power is gone
   */
  public static LossyDisk mount(Path program, Path before, Path after, long seed, int changes)
      throws IOException {
    Files.createDirectory(after);
    Path mount = Files.createDirectory(after.resolveSibling(after.getFileName() + "-mounted"));
    Process process =
        new ProcessBuilder(
                program.toString(),
                before.toString(),
                after.toString(),
                mount.toString(),
                String.valueOf(seed),
                String.valueOf(changes))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    return new LossyDisk(process, mount, after);
  }

  /** Where it is used. */
  public Path folder() {
    return mount;
  }

  /** From now on every change fails, as it does to a program that outlives its disk. */
  public void cut() throws IOException {
    String pid = String.valueOf(process.pid());
    new ProcessBuilder("kill", "-USR1", pid).start().onExit().join();
  }

  /**
   * @param holds a folder with what the disk holds after the cut
   * @param changes made before it
   * @param lost sectors and names that were changed and aren't there
   */
  public record Remains(Path holds, int changes, int lost) {}

  /** What is left; to be asked when no program uses the disk any more. */
  public Remains remains() throws IOException {
    process.toHandle().destroy(); // SIGTERM; the process keeps its streams
    String said = says.readLine();
    awaitEnd();
    if (said == null) {
      throw new AssertionError("the disk broke: " + process.exitValue());
    }
    String[] words = said.split("\\D+");
    return new Remains(after, Integer.parseInt(words[0]), Integer.parseInt(words[1]));
  }

  private void awaitEnd() {
    try {
      if (!process.waitFor(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
        throw new AssertionError("the disk doesn't end");
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() throws IOException {
    process.toHandle().destroy();
    awaitEnd();
    Files.delete(mount);
  }
}
