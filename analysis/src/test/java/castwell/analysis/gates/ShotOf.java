package castwell.analysis.gates;

import java.util.Optional;

/** Shots with lengths as a test wants them. */
final class ShotOf {
  private ShotOf() {}

  /** A shot of an arrow of three quarters of a metre that nobody measured. */
  static GateShot residual(double atS, double residualM) {
    return new GateShot(atS, 0.75, residualM, Optional.empty());
  }

  static GateShot length(double lengthM, double residualM, KnownLength known) {
    return new GateShot(0, lengthM, residualM, Optional.of(known));
  }
}
