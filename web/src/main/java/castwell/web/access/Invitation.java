package castwell.web.access;

import castwell.web.settings.HttpAddress;
import castwell.web.settings.HttpSettings;
import io.nayuki.qrcodegen.QrCode;

/**
 * The page's address, and the link that lets somebody in. The link has the key in its fragment,
 * which browsers keep to themselves, so it gets into no log of a server or proxy on the way.
 */
public final class Invitation {
  private static final int QUIET_MODULES = 4; // A reader needs this margin (ISO/IEC 18004).

  private final String page;

  private Invitation(String page) {
    this.page = page;
  }

  public static Invitation to(HttpSettings http, HttpAddress address) {
    String scheme = http.certificate().isPresent() ? "https" : "http";
    HttpAddress own = new HttpAddress(ReachableAddress.of(address.host()), address.port());
    return new Invitation(http.reachedAt().orElseGet(() -> "%s://%s/".formatted(scheme, own)));
  }

  /** The page's address. */
  public String page() {
    return page;
  }

  public String link(String key) {
    return page + "enter#" + key;
  }

  /** The link in words and as a QR code, for the terminal. */
  public String text(String key) {
    return """
        To change anything from any computer, a key is needed. This link lets a browser in; it is \
        told this once, so keep it:

          %s

        %s"""
        .formatted(link(key), halfBlocks(QrCode.encodeText(link(key), QrCode.Ecc.LOW)));
  }

  /**
   * Draws a code with two modules in one character. The light modules are drawn, so that it can be
   * read on dark terminals as well as on light ones.
   */
  static String halfBlocks(QrCode code) {
    StringBuilder drawn = new StringBuilder();
    for (int y = -QUIET_MODULES; y < code.size + QUIET_MODULES; y += 2) {
      drawn.append("\u001b[30;47m");
      for (int x = -QUIET_MODULES; x < code.size + QUIET_MODULES; x++) {
        boolean upper = code.getModule(x, y);
        boolean lower = code.getModule(x, y + 1);
        drawn.append(upper ? (lower ? '█' : '▀') : (lower ? '▄' : ' '));
      }
      drawn.append("\u001b[0m\n");
    }
    return drawn.toString();
  }
}
