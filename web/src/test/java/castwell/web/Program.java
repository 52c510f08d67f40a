package castwell.web;

import castwell.capture.Until;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/** The program in a process of its own, as a person starts it. */
public final class Program implements AutoCloseable {

  private final Process process;
  private final Path errors;
  private final BufferedReader out;

  /** How it ended, and all it said. */
  public record Outcome(int exitCode, String out, String err) {}

  private Program(Process process, Path errors, Duration patience) {
    this.process = process;
    this.errors = errors;
    this.out = process.inputReader();
    // Whoever waits for its words would wait for ever, were it to hang.
    CompletableFuture.delayedExecutor(patience.toSeconds(), TimeUnit.SECONDS)
        .execute(process::destroyForcibly);
  }

  public static Program start(String... arguments) {
    return under(List.of(), arguments);
  }

  /** One that is wanted for longer than usual. */
  public static Program lasting(Duration atMost, String... arguments) {
    return under(List.of(), atMost, arguments);
  }

  /**
   * @param wrapper the words of another command that runs it
   */
  public static Program under(List<String> wrapper, String... arguments) {
    return under(wrapper, Until.PATIENCE, arguments);
  }

  private static Program under(List<String> wrapper, Duration patience, String... arguments) {
    try {
      List<String> command = new ArrayList<>(wrapper);
      command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
      command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx256m"));
      if (Runtime.version().feature() >= 24) {
        command.add("--enable-native-access=ALL-UNNAMED"); // as the jar's manifest says
      }
      command.addAll(List.of("-cp", System.getProperty("java.class.path"), "castwell.web.Main"));
      command.addAll(List.of(arguments));
      Path errors = Files.createTempFile("castwell", ".err");
      Process process = new ProcessBuilder(command).redirectError(errors.toFile()).start();
      return new Program(process, errors, patience);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static Outcome run(String... arguments) {
    try (Program program = start(arguments)) {
      return program.outcome();
    }
  }

  public long pid() {
    return process.pid();
  }

  /** The next line it says. */
  public String line() {
    try {
      String line = out.readLine();
      if (line == null) {
        throw new AssertionError("it ended: " + outcome());
      }
      return line;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Lets it live so long, unless it ends by itself. */
  public void letLive(Duration time) {
    try {
      process.waitFor(time.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** SIGKILL: it can't do anything about it. */
  public void kill() {
    process.destroyForcibly();
    letLive(Until.PATIENCE);
  }

  /** Asks it to end, as a supervisor does. */
  public void terminate() {
    process.toHandle().destroy(); // SIGTERM; the process keeps its streams
  }

  /** Waits for its end. */
  public Outcome outcome() {
    try {
      StringBuilder said = new StringBuilder();
      char[] some = new char[8192];
      for (int n = out.read(some); n >= 0; n = out.read(some)) {
        said.append(some, 0, n);
      }
      if (!process.waitFor(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
        throw new AssertionError("it doesn't end");
      }
      return new Outcome(process.exitValue(), said.toString(), Files.readString(errors));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    process.destroyForcibly();
    try {
      Files.deleteIfExists(errors);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
