package castwell.capture.device;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Where a board is, as a person says it. */
public sealed interface PortSpec {

  /** A serial port of this machine. */
  sealed interface Serial extends PortSpec {}

  /** The station's own topic at the broker, for a wireless board or another machine's port. */
  record OverMqtt() implements PortSpec {
    @Override
    public String toString() {
      return "mqtt";
    }
  }

  /** A path of the system; a symbolic link there is followed anew at each opening. */
  record ByPath(String path) implements Serial {
    @Override
    public String toString() {
      return path;
    }
  }

  /** The device with this USB identity, at whatever path it is now. */
  record ByUsb(int vendorId, int productId, Optional<String> serialNumber) implements Serial {
    @Override
    public String toString() {
      return "usb:%04x:%04x".formatted(vendorId, productId)
          + serialNumber.map(serial -> ":" + serial).orElse("");
    }
  }

  /** The first port with a board that answers. */
  record Anywhere() implements Serial {
    @Override
    public String toString() {
      return "auto";
    }
  }

  /**
   * Reads {@code auto}, {@code mqtt}, {@code usb:VVVV:PPPP}, {@code usb:VVVV:PPPP:SERIAL} (hex
   * digits) or a path.
   *
   * @throws IllegalArgumentException with one sentence when it is none of these
   */
  static PortSpec parse(String text) {
    if (text.equals("auto")) {
      return new Anywhere();
    }
    if (text.equals("mqtt")) {
      return new OverMqtt();
    }
    if (text.startsWith("usb:")) {
      Pattern usb = Pattern.compile("usb:([0-9A-Fa-f]{4}):([0-9A-Fa-f]{4})(?::(.+))?");
      Matcher match = usb.matcher(text);
      if (!match.matches()) {
        throw refusal(text);
      }
      return new ByUsb(
          Integer.parseInt(match.group(1), 16),
          Integer.parseInt(match.group(2), 16),
          Optional.ofNullable(match.group(3)));
    }
    if (text.isBlank() || text.chars().anyMatch(Character::isISOControl)) {
      throw refusal(text);
    }
    return new ByPath(text);
  }

  private static IllegalArgumentException refusal(String text) {
    return new IllegalArgumentException(
        "\""
            + text.replaceAll("\\p{Cntrl}", "?")
            + "\" names no port; give auto, a path such as /dev/ttyACM0, a USB identity such as"
            + " usb:2341:0043 or usb:2341:0043:SERIAL, or mqtt for one that a broker passes on.");
  }
}
