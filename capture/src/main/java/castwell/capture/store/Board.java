package castwell.capture.store;

/**
 * A board as the store tells it apart from others.
 *
 * @param series counts from 1; the next one begins when a board of this name comes with other edges
 *     under known numbers
 */
public record Board(long id, String device, int series) {

  /** The board's name in shot ids: unique, and fit for a web address. */
  public String key() {
    return series == 1 ? device : device + "~" + series;
  }
}
