package castwell.web;

import castwell.capture.Until;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * The program as it is shipped, in a process of its own: the runnable jar, or what {@code
 * -Dcastwell.command=} says.
 */
final class Shipped implements AutoCloseable {
  static final String COMMAND =
      System.getProperty("castwell.command", "java -jar target/castwell.jar");

  private static final int TICKS_A_SECOND = 100; // of /proc, whatever the kernel's own (proc(5))

  private static final HttpClient CLIENT = HttpClient.newHttpClient();

  private final Process process;
  private final BufferedReader out;
  private final Path complaints;

  private Shipped(Process process, Path complaints) {
    this.process = process;
    this.out = process.inputReader();
    this.complaints = complaints;
  }

  static Shipped start(String... arguments) {
    try {
      List<String> command = new ArrayList<>(List.of(COMMAND.split(" ")));
      command.addAll(List.of(arguments));
      Path complaints = Files.createTempFile("castwell", ".log");
      complaints.toFile().deleteOnExit();
      return new Shipped(
          new ProcessBuilder(command).redirectError(complaints.toFile()).start(), complaints);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Runs it to its end, and tells how many seconds that took. */
  static double seconds(String... arguments) throws IOException, InterruptedException {
    long began = System.nanoTime();
    try (Shipped program = start(arguments)) {
      while (program.out.readLine() != null) {}
      if (program.process.waitFor() != 0) {
        throw new IOException(String.join(" ", arguments) + " failed");
      }
      return (System.nanoTime() - began) / 1e9;
    }
  }

  /** Waits until it says where its page is. */
  URI page() throws IOException {
    String line = out.readLine();
    while (line != null && !line.contains("http:")) {
      line = out.readLine();
    }
    if (line == null) {
      throw new IOException(
          COMMAND + " ended without a page: " + Files.readString(complaints).strip());
    }
    return URI.create(line.substring(line.indexOf("http:")));
  }

  /** Takes one page, the first as any other. */
  static void get(URI page) {
    try {
      HttpRequest request = HttpRequest.newBuilder(page).build();
      int status = CLIENT.send(request, BodyHandlers.ofByteArray()).statusCode();
      if (status != 200) {
        throw new IOException(page + ": status " + status);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Resident now, in MiB. */
  double residentMib() throws IOException {
    return Files.readAllLines(Path.of("/proc/" + process.pid() + "/status")).stream()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToDouble(line -> Double.parseDouble(line.replaceAll("\\D", "")) / 1024)
        .findFirst()
        .orElseThrow();
  }

  /** What all its threads used of a processor since it began. */
  double processorSeconds() throws IOException {
    String stat = Files.readString(Path.of("/proc/" + process.pid() + "/stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return (Double.parseDouble(fields[11]) + Double.parseDouble(fields[12])) / TICKS_A_SECOND;
  }

  @Override
  public void close() throws IOException {
    process.toHandle().destroy();
    try {
      if (!process.waitFor(Until.PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
