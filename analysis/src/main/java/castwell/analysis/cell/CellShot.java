package castwell.analysis.cell;

/**
 * One arrow's speed, as the bow's arithmetic takes it in.
 *
 * @param firedS the time of the shot in seconds since 1970, which orders the shots of a session
 * @param gatesUMps the speed's own standard uncertainty that comes from the gates alone
 * @param kept whether a person brought the shot back, so that no test sets it aside again
 */
public record CellShot(String id, double firedS, double speedMps, double gatesUMps, boolean kept) {
  CellShot times(double factor) {
    return new CellShot(id, firedS, speedMps * factor, gatesUMps * factor, kept);
  }
}
