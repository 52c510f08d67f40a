package castwell.web.unit;

/**
 * A unit in which a quantity is shown.
 *
 * @param symbol as it stands behind a number
 * @param si how many SI units one of it is
 * @param decimals how many a figure without an uncertainty shows
 */
public record Unit(String symbol, double si, int decimals) {}
