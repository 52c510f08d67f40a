package castwell.web.settings;

import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Where the page is served.
 *
 * @param host a name or an address; 127.0.0.1 for this computer alone
 * @param port 0 for any that is free
 */
public record HttpAddress(String host, int port) {
  public static final HttpAddress LOOPBACK = new HttpAddress("127.0.0.1", 8017);

  private static final Pattern FORM =
      Pattern.compile(
          "(?:(?:\\[(?<ipv6>[^\\s\\[\\]]+)]|(?<name>[^\\s:\\[\\]]+)):)?(?<port>\\d{1,5})");

  /**
   * @param text <code>[HOST:]PORT</code>; an IPv6 address in square brackets
   * @throws IllegalArgumentException with one sentence on what is wrong
   */
  public static HttpAddress parse(String text) {
    Matcher match = FORM.matcher(text);
    if (!match.matches() || Integer.parseInt(match.group("port")) > 65535) {
      throw new IllegalArgumentException(
          "an address to listen at is PORT or HOST:PORT, such as 127.0.0.1:8017, not \""
              + text
              + "\"");
    }
    String host =
        Stream.of(match.group("ipv6"), match.group("name"))
            .filter(Objects::nonNull)
            .findFirst()
            .orElse(LOOPBACK.host);
    return new HttpAddress(host, Integer.parseInt(match.group("port")));
  }

  /** Whether only this computer can reach it. */
  public boolean isLoopback() {
    return host.matches("localhost|127(\\.\\d{1,3}){3}|::1|0:0:0:0:0:0:0:1");
  }

  @Override
  public String toString() {
    return (host.contains(":") ? "[" + host + "]" : host) + ":" + port;
  }
}
