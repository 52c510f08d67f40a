package castwell.capture.intake;

import castwell.capture.intake.sheet.SheetKind;
import java.util.List;

/** Counts what becomes of a sheet's lines. */
final class Tally {
  private int taken;
  private int setAside;
  private int already;

  void take() {
    taken++;
  }

  void setAside() {
    setAside++;
  }

  void already() {
    already++;
  }

  int taken() {
    return taken;
  }

  Taken of(SheetKind kind, List<String> notRead) {
    return new Taken(kind, taken, setAside, already, notRead);
  }
}
