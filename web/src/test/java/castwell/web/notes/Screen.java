package castwell.web.notes;

/** The light screen of the notes: what an arrow's shadow covers of its photodiodes. */
final class Screen {
  static final double PITCH_MM = 5.08;
  static final double DIODE_MM = 2.75;
  static final double MAGNIFIED = 600.0 / 400;
  static final int BOARDS = 4;
  static final int DIODES = 12;

  private Screen() {}

  /** Where a photodiode's middle is, from the row's middle, by its number from 0. */
  static double placeMm(int diode) {
    return (diode + 0.5 - BOARDS * DIODES / 2.0) * PITCH_MM;
  }

  /** The width of shadow with this middle that covers so much of one board's photodiodes. */
  static double shadowFor(double coveredMm, double middleMm) {
    double narrow = 0;
    double wide = 40;
    while (wide - narrow > 1e-6) {
      double width = (narrow + wide) / 2;
      if (mostCovered(width, middleMm) < coveredMm) {
        narrow = width;
      } else {
        wide = width;
      }
    }
    return wide;
  }

  private static double mostCovered(double widthMm, double middleMm) {
    double most = 0;
    for (int board = 0; board < BOARDS; board++) {
      double sum = 0;
      for (int diode = board * DIODES; diode < (board + 1) * DIODES; diode++) {
        double from = Math.max(placeMm(diode) - DIODE_MM / 2, middleMm - widthMm / 2);
        double to = Math.min(placeMm(diode) + DIODE_MM / 2, middleMm + widthMm / 2);
        sum += Math.max(0, to - from);
      }
      most = Math.max(most, sum);
    }
    return most;
  }
}
