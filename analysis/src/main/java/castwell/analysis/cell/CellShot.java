package castwell.analysis.cell;

/**
 * One arrow's speed, as the bow's arithmetic takes it in.
 *
 * @param firedS seconds since 1970: orders the shots of a session
 * @param gatesUMps the speed's own standard uncertainty by the gates alone
 * @param kept whether a person brought it back, so that no test of ours sets it aside again
 */
public record CellShot(String id, double firedS, double speedMps, double gatesUMps, boolean kept) {}
