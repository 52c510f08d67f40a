package castwell.capture.device;

/** A place where a board may be reached, now or later. */
public interface Port {

  /** What a person calls the port: a path, a USB identity, "auto". */
  String name();

  /**
   * Looks the board up and opens a link to it.
   *
   * @throws PortUnavailable when that can't be done now
   */
  Link open() throws PortUnavailable;
}
