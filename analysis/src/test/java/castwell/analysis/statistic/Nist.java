package castwell.analysis.statistic;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Lines of the reference data sets under resources/nist. */
public final class Nist {
  private Nist() {}

  public static List<String> lines(String name) {
    try (InputStream in = Nist.class.getResourceAsStream("/nist/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** One number a line, whatever else there is. */
  public static double[] column(String name) {
    return lines(name).stream()
        .map(String::strip)
        .filter(line -> line.matches("-?[.\\d]+([Ee][-+]?\\d+)?"))
        .mapToDouble(Double::parseDouble)
        .toArray();
  }
}
