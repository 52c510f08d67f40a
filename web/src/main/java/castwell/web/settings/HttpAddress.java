package castwell.web.settings;

/**
 * Where the page is served.
 *
 * @param host a name or an address; 127.0.0.1 for this computer alone
 * @param port 0 for any that is free
 */
public record HttpAddress(String host, int port) {
  public static final HttpAddress LOOPBACK = new HttpAddress("127.0.0.1", 8017);

  /**
   * @param text <code>[HOST:]PORT</code>; an IPv6 address in square brackets
   * @throws IllegalArgumentException with one sentence
   */
  public static HttpAddress parse(String text) {
    int colon = text.lastIndexOf(':');
    String host = colon < 0 ? LOOPBACK.host : text.substring(0, colon);
    if (host.startsWith("[") && host.endsWith("]")) {
      host = host.substring(1, host.length() - 1);
    }
    String port = text.substring(colon + 1);
    if (host.isEmpty() || !port.matches("\\d{1,5}") || Integer.parseInt(port) > 65535) {
      throw new IllegalArgumentException(
          "an address to listen at is PORT or HOST:PORT, such as 127.0.0.1:8017, not \""
              + text
              + "\"");
    }
    return new HttpAddress(host, Integer.parseInt(port));
  }

  @Override
  public String toString() {
    return (host.contains(":") ? "[" + host + "]" : host) + ":" + port;
  }
}
