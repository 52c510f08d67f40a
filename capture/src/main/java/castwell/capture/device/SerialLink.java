package castwell.capture.device;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.atomic.AtomicBoolean;

/** A serial port held open, for this program alone: 115200 baud, 8 data bits, 1 stop bit. */
final class SerialLink implements Link {
  private static final int BAUD = 115200;
  private static final int LONGEST_WAIT_MILLIS = 500;
  private static final int EACCES = 13;
  private static final int EAGAIN = 11;
  private static final int EBUSY = 16;

  private final SerialPort port;
  private final Runnable onClose;
  private final AtomicBoolean closed = new AtomicBoolean();

  private SerialLink(SerialPort port, Runnable onClose) {
    this.port = port;
    this.onClose = onClose;
  }

  /**
   * @param path the device itself, not a symbolic link to it
   * @param onClose called once, when the link is closed
   * @throws PortUnavailable when the port can't be opened now
   */
  static SerialLink open(Path path, Runnable onClose) throws PortUnavailable {
    if (Files.isRegularFile(path) || Files.isDirectory(path)) {
      throw PortUnavailable.of("port.no_port", path);
    }
    if (!Files.isReadable(path) || !Files.isWritable(path)) {
      throw notPermitted(path);
    }
    try {
      SerialPort port = SerialPort.getCommPort(path.toString());
      port.setComPortParameters(BAUD, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
      port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
      port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, LONGEST_WAIT_MILLIS, 0);
      // Without an argument the library sleeps for 200 ms first.
      if (!port.openPort(0)) {
        throw refused(path, port.getLastErrorCode());
      }
      return new SerialLink(port, onClose);
    } catch (SerialPortInvalidPortException e) {
      throw SerialPorts.absent(path.toString());
    }
  }

  private static PortUnavailable refused(Path path, int errorNumber) {
    return switch (errorNumber) {
      case EACCES -> notPermitted(path);
      case EAGAIN, EBUSY -> PortUnavailable.of("port.busy", path);
      default -> PortUnavailable.of("port.error", path, errorNumber);
    };
  }

  private static PortUnavailable notPermitted(Path path) {
    return PortUnavailable.of("port.not_permitted", path);
  }

  @Override
  public int read(byte[] buffer) {
    return port.readBytes(buffer, buffer.length);
  }

  @Override
  public synchronized void write(byte[] bytes) throws IOException {
    for (int done = 0; done < bytes.length; ) {
      byte[] rest = Arrays.copyOfRange(bytes, done, bytes.length);
      int written = port.writeBytes(rest, rest.length);
      if (written <= 0) {
        throw new IOException(port.getSystemPortPath() + " takes no bytes any more.");
      }
      done += written;
    }
  }

  @Override
  public void close() {
    if (closed.compareAndSet(false, true)) {
      port.closePort();
      onClose.run();
    }
  }
}
