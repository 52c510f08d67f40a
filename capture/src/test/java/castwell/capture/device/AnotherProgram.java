package castwell.capture.device;

import castwell.capture.AnotherJvm;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;

/** Another process that opens a port and holds it until told to end. */
final class AnotherProgram {
  private AnotherProgram() {}

  /**
   * @param unpackInto where its serial library unpacks itself
   */
  static AnotherJvm opening(Path port, Path unpackInto) throws IOException {
    return AnotherJvm.running(AnotherProgram.class, port.toString(), unpackInto.toString());
  }

  public static void main(String[] arguments) throws Exception {
    SerialPorts.unpackInto(Path.of(arguments[1]));
    Port port = new SerialPorts(() -> 0).reserve(new PortSpec.ByPath(arguments[0]));
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
