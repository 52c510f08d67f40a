package castwell.capture.daemon;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * What really went through the gates.
 *
 * @param firstEdge number of the passage's first edge, whether or not its line arrived
 * @param counts whether it is a shot with a speed; otherwise a misread
 * @param speedFps of a shot
 * @param lengthMm of a shot
 */
record Truth(
    int boot, int firstEdge, boolean counts, double speedFps, double lengthMm, String why) {

  static Truth misread(int boot, int firstEdge, String why) {
    return new Truth(boot, firstEdge, false, Double.NaN, Double.NaN, why);
  }

  static List<Truth> read(Path csv) throws IOException {
    return Files.readAllLines(csv).stream().skip(1).map(Truth::parse).toList();
  }

  private static Truth parse(String line) {
    String[] cells = line.split(",", 6);
    return new Truth(
        Integer.parseInt(cells[0]),
        Integer.parseInt(cells[1]),
        cells[2].equals("shot"),
        number(cells[3]),
        number(cells[4]),
        cells[5]);
  }

  private static double number(String cell) {
    return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
  }
}
