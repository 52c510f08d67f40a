package castwell.web.access;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import java.util.regex.Pattern;

/** Checks where a request says that it comes from, and where it says that it goes. */
public final class Origin {
  private static final Pattern PORT = Pattern.compile(":\\d*$");
  private static final Pattern LOOPBACK =
      Pattern.compile("localhost|127(\\.\\d{1,3}){3}|\\[::1]|\\[0:0:0:0:0:0:0:1]");
  private static final Pattern ADDRESS = Pattern.compile("[0-9.]+|[0-9a-fA-F:.]*:[0-9a-fA-F:.]*");

  private Origin() {}

  /**
   * Whether a Host header names this computer by a name that no other computer can take. Anybody
   * can make a name of their own point here (DNS rebinding), and the browser then takes their page
   * and this one for one site.
   */
  public static boolean isLoopbackHost(String host) {
    String name = PORT.matcher(host).replaceFirst("").toLowerCase(Locale.ROOT);
    return LOOPBACK.matcher(name).matches();
  }

  /**
   * Whether an Origin header (RFC 6454) names the host that the request went to. The scheme isn't
   * compared, since it may be another one in front of a proxy.
   */
  public static boolean isOf(String origin, String host) {
    int scheme = origin.indexOf("://");
    return scheme > 0 && authority(origin.substring(scheme + 3)).equals(authority(host));
  }

  /** The host and port of an address. Some leave out a scheme's own port, so it is added. */
  private static String authority(String text) {
    return text.toLowerCase(Locale.ROOT).replaceFirst(":(80|443)$", "");
  }

  /** The addresses that share one limit: an IPv6 user has a whole /64 to take addresses from. */
  public static String neighbourhood(String address) {
    String plain = address.replaceAll("[\\[\\]]|%.*", "");
    if (!ADDRESS.matcher(plain).matches()) {
      return address; // An address in figures is never looked up as a name.
    }
    try {
      byte[] bytes = InetAddress.getByName(plain).getAddress();
      return bytes.length == 4
          ? plain
          : HexFormat.ofDelimiter(":").formatHex(Arrays.copyOf(bytes, 8)) + "/64";
    } catch (UnknownHostException e) {
      return address;
    }
  }
}
