package castwell.capture.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;

/** Another process that opens a data folder and holds it until told to end. */
final class AnotherCastwell implements AutoCloseable {
  private final Process process;
  private final BufferedReader says;

  private AnotherCastwell(Process process) {
    this.process = process;
    this.says = process.inputReader();
  }

  static AnotherCastwell writingTo(Path folder) throws IOException {
    return new AnotherCastwell(
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                AnotherCastwell.class.getName(),
                folder.toString())
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

  public static void main(String[] arguments) throws IOException {
    try (Store store = Store.open(Path.of(arguments[0]))) {
      store.writing(t -> t.rack().addBow("heron", Rows.NOON));
      System.out.println("open");
      while (System.in.read() >= 0) {
        // until the other side ends
      }
    } catch (StoreRefused e) {
      System.out.println(e.getMessage());
    }
  }
}
