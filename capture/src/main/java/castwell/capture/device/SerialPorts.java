package castwell.capture.device;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** The serial ports of this machine, each for one station of this program at a time. */
public final class SerialPorts {
  /** How long to wait for a board's answer, since it may start anew when its port is opened. */
  private static final Duration PATIENCE = Duration.ofMillis(2500);

  private final Supplier<List<PluggedIn>> pluggedIn;
  private final BoardCall call;
  private final Set<Path> claimed = ConcurrentHashMap.newKeySet();
  private final List<PortSpec> promised = new CopyOnWriteArrayList<>();

  /**
   * @param micros the host's monotonic clock
   */
  public SerialPorts(LongSupplier micros) {
    this(PluggedIn::now, micros, PATIENCE);
  }

  SerialPorts(Supplier<List<PluggedIn>> pluggedIn, LongSupplier micros, Duration patience) {
    this.pluggedIn = pluggedIn;
    this.call = new BoardCall(micros, patience);
  }

  /**
   * Has the serial library unpack its native part into this folder instead of one that every user
   * of the machine may write to. It must be called before anything else touches a serial port.
   *
   * @throws IOException when the folder can't be made
   */
  public static void unpackInto(Path folder) throws IOException {
    Files.createDirectories(folder);
    // The library reads this property once, while its class loads; it has none of its own for that.
    String before = System.setProperty("java.io.tmpdir", folder.toAbsolutePath().toString());
    try {
      Class.forName("com.fazecast.jSerialComm.SerialPort");
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException(e);
    } finally {
      System.setProperty("java.io.tmpdir", before);
    }
  }

  /**
   * Reserves the port that a specification names, whether or not it is there now, so that no search
   * for a board tries it.
   */
  public Port reserve(PortSpec.Serial spec) {
    promised.add(spec);
    if (spec instanceof PortSpec.ByPath byPath) {
      return new PathPort(byPath, this);
    } else if (spec instanceof PortSpec.ByUsb byUsb) {
      return new UsbPort(byUsb, this);
    }
    return new AnyPort(this, call);
  }

  List<PluggedIn> pluggedIn() {
    return pluggedIn.get();
  }

  /** Whether a station asked for this very port. */
  boolean isPromised(PluggedIn candidate) {
    return promised.stream().anyMatch(spec -> names(spec, candidate));
  }

  private static boolean names(PortSpec spec, PluggedIn candidate) {
    if (spec instanceof PortSpec.ByUsb byUsb) {
      return candidate.matches(byUsb);
    }
    return spec instanceof PortSpec.ByPath byPath && isSame(byPath.path(), candidate.path());
  }

  private static boolean isSame(String one, String other) {
    try {
      return Files.isSameFile(Path.of(one), Path.of(other));
    } catch (IOException absent) {
      return false;
    }
  }

  /** Opens what the path leads to now, and claims it until the link is closed. */
  Link claim(String path) throws PortUnavailable {
    Path device;
    try {
      // The library would look for another port of the same last name where this one is absent.
      device = Path.of(path).toRealPath();
    } catch (IOException e) {
      throw absent(path);
    }
    if (!claimed.add(device)) {
      throw PortUnavailable.of("port.claimed", path);
    }
    boolean open = false;
    try {
      Link link = SerialLink.open(device, () -> claimed.remove(device));
      open = true;
      return link;
    } finally {
      if (!open) {
        claimed.remove(device);
      }
    }
  }

  static PortUnavailable absent(String path) {
    return PortUnavailable.of("port.absent", path);
  }
}
