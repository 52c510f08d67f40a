package castwell.capture.device;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;

/** Another process that opens a port and holds it until told to end. */
final class AnotherProgram implements AutoCloseable {
  private final Process process;
  private final BufferedReader says;

  private AnotherProgram(Process process) {
    this.process = process;
    this.says = process.inputReader();
  }

  /**
   * @param unpackInto where its serial library unpacks itself
   */
  static AnotherProgram opening(Path port, Path unpackInto) throws IOException {
    return new AnotherProgram(
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                AnotherProgram.class.getName(),
                port.toString(),
                unpackInto.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start());
  }

  /** The next line it says; empty when it ended. */
  String says() throws IOException {
    String line = says.readLine();
    return line == null ? "" : line;
  }

  @Override
  public void close() throws IOException {
    process.getOutputStream().close();
    process.onExit().join();
  }

  public static void main(String[] arguments) throws Exception {
    SerialPorts.unpackInto(Path.of(arguments[1]));
    Port port = new SerialPorts(() -> 0).port(PortSpec.parse(arguments[0]));
    try (Link link = port.open()) {
      System.out.println("open");
      System.out.println(
          Files.readAllLines(Path.of("/proc/self/maps")).stream()
              .filter(line -> line.contains("SerialComm"))
              .map(line -> line.replaceFirst("^[^/]*", ""))
              .distinct()
              .collect(Collectors.joining(" ")));
      while (System.in.read() >= 0) {
        link.read(new byte[1]);
      }
    } catch (PortUnavailable e) {
      System.out.println(e.getMessage());
    }
  }
}
