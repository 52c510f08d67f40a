package castwell.capture;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Another process that runs a test's own main class until told to end. */
public final class AnotherJvm implements AutoCloseable {
  private final Process process;
  private final BufferedReader says;

  private AnotherJvm(Process process) {
    this.process = process;
    this.says = process.inputReader();
  }

  /** It should end when its standard input does. */
  public static AnotherJvm running(Class<?> main, String... arguments) throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    List<String> start =
        List.of(java, "-cp", System.getProperty("java.class.path"), main.getName());
    return new AnotherJvm(
        new ProcessBuilder(Stream.concat(start.stream(), Stream.of(arguments)).toList())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start());
  }

  /** The next line it says; empty when it ended. */
  public String says() throws IOException {
    String line = says.readLine();
    return line == null ? "" : line;
  }

  /** As kill -9 does. */
  public void kill() {
    process.destroyForcibly().onExit().join();
  }

  @Override
  public void close() throws IOException {
    process.getOutputStream().close();
    process.onExit().join();
  }
}
