package castwell.web.access;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.DatagramSocket;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Optional;

/**
 * Finds the address by which others most likely reach this computer, where the one it listens at
 * stands for all of its addresses.
 */
final class ReachableAddress {
  private static final String NOBODYS = "192.0.2.1"; // This address belongs to nobody (RFC 5737).

  private ReachableAddress() {}

  static String of(String host) {
    boolean all = host.equals("0.0.0.0") || host.equals("::");
    return all ? towardsOthers().or(ReachableAddress::first).orElse("127.0.0.1") : host;
  }

  /**
   * The address that this computer would send from. Connecting a datagram socket sends nothing, it
   * only chooses that address.
   */
  private static Optional<String> towardsOthers() {
    try (DatagramSocket socket = new DatagramSocket()) {
      socket.connect(new InetSocketAddress(NOBODYS, 9));
      InetAddress own = socket.getLocalAddress();
      return own.isAnyLocalAddress() ? Optional.empty() : Optional.of(own.getHostAddress());
    } catch (IOException | UncheckedIOException e) {
      return Optional.empty(); // This network has no way out.
    }
  }

  private static Optional<String> first() {
    try {
      return NetworkInterface.networkInterfaces()
          .flatMap(NetworkInterface::inetAddresses)
          .filter(address -> address instanceof Inet4Address && !address.isLoopbackAddress())
          .map(InetAddress::getHostAddress)
          .findFirst();
    } catch (SocketException e) {
      return Optional.empty();
    }
  }
}
