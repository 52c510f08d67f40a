package castwell.web.cli;

import java.io.PrintStream;

/** A progress bar, if there is a terminal to show it on. */
final class ProgressBar implements AutoCloseable {
  private static final int WIDTH = 40;

  private final String name;
  private final long whole;
  private final PrintStream terminal = System.err;
  private final boolean shown = System.console() != null;
  private int drawn = -1;

  ProgressBar(String name, long whole) {
    this.name = name;
    this.whole = Math.max(1, whole);
  }

  void reached(long part) {
    int percent = (int) (100 * part / whole);
    if (shown && percent != drawn) {
      drawn = percent;
      int full = WIDTH * percent / 100;
      terminal.printf(
          "\r%s [%s%s] %3d %%", name, "#".repeat(full), " ".repeat(WIDTH - full), percent);
    }
  }

  @Override
  public void close() {
    if (shown) {
      reached(whole);
      terminal.println();
    }
  }
}
