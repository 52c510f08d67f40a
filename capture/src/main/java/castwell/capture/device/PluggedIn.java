package castwell.capture.device;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.List;

/**
 * A serial port that is there now.
 *
 * @param vendorId -1 when it isn't a USB device
 * @param productId -1 when it isn't a USB device
 * @param serialNumber the USB serial number; empty when it isn't known
 */
record PluggedIn(String path, int vendorId, int productId, String serialNumber) {

  /** Every port that the system knows, USB devices first, since most boards are. */
  static List<PluggedIn> now() {
    return Arrays.stream(SerialPort.getCommPorts())
        .map(PluggedIn::of)
        .sorted((a, b) -> Boolean.compare(a.vendorId < 0, b.vendorId < 0))
        .toList();
  }

  private static PluggedIn of(SerialPort port) {
    return new PluggedIn(
        port.getSystemPortPath(),
        port.getVendorID(),
        port.getProductID(),
        String.valueOf(port.getSerialNumber()));
  }

  boolean matches(PortSpec.ByUsb usb) {
    return vendorId == usb.vendorId()
        && productId == usb.productId()
        && usb.serialNumber().map(serialNumber::equals).orElse(true);
  }
}
