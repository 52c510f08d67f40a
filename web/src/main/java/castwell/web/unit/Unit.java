package castwell.web.unit;

/**
 * In what a quantity is shown.
 *
 * @param symbol as it stands behind a number
 * @param si how much of the SI unit one of it is
 * @param decimals shown of a figure without an uncertainty
 */
public record Unit(String symbol, double si, int decimals) {}
