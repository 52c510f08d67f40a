package castwell.capture.store;

/**
 * A board as the store tells it apart.
 *
 * @param series 1, or more when its name came again with other edges under known numbers
 */
public record Board(long id, String device, int series) {

  /** The name in shot ids: unique, and fit for an address. */
  public String key() {
    return series == 1 ? device : device + "~" + series;
  }
}
