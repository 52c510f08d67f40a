package castwell.analysis.gates;

import java.util.Optional;

/** Shots at 50 m/s with lengths as a test wants them. */
final class ShotOf {
  private static final double MPS = 50;

  private ShotOf() {}

  /** A shot of an arrow of three quarters of a metre that nobody measured. */
  static GateShot residual(double atS, double residualM) {
    return new GateShot(atS, MPS, 0.75 + residualM / 2, 0.75 - residualM / 2, Optional.empty());
  }

  static GateShot lengths(double lengthAM, double lengthBM, KnownLength known) {
    return new GateShot(0, MPS, lengthAM, lengthBM, Optional.of(known));
  }
}
