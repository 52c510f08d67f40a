package castwell.web.cli;

import castwell.capture.device.Link;
import castwell.capture.device.Port;
import castwell.capture.device.PortSpec;
import castwell.capture.device.PortUnavailable;
import castwell.capture.device.SerialPorts;
import castwell.capture.publish.WirePort;
import castwell.web.settings.Settings;
import castwell.web.settings.Settings.Station;
import java.util.Optional;

/** Finds the ports that the command line names. */
final class Ports {
  private Ports() {}

  static PortSpec parse(String text) {
    try {
      return PortSpec.parse(text);
    } catch (IllegalArgumentException e) {
      throw new SaidPlainly("--port: " + e.getMessage());
    }
  }

  /** A serial port of this computer. */
  static PortSpec.Serial serial(String text) {
    if (parse(text) instanceof PortSpec.Serial serial) {
      return serial;
    }
    throw new SaidPlainly(
        "--port: \""
            + text
            + "\" is no port of this machine; give auto, a path or a USB identity.");
  }

  /** The port of a station's board. */
  static Port of(Station station, Settings settings, SerialPorts serial) {
    if (station.port() instanceof PortSpec.Serial here) {
      return serial.reserve(here);
    }
    return WirePort.ofListener(
        settings
            .broker()
            .orElseThrow(
                () ->
                    new SaidPlainly(
                        "The station %s is heard over a broker, and none is named: write its url in [mqtt] of the settings file."
                            .formatted(station.name()))),
        station.name());
  }

  /**
   * Opens a port, since whoever names one on the command line wants to hear at once when it isn't
   * there. The open link is handed on, because a board may restart each time its port is opened.
   */
  static Port opened(Port port) throws PortUnavailable {
    Link first = port.open();
    return new Port() {
      private Optional<Link> waiting = Optional.of(first);

      @Override
      public String name() {
        return port.name();
      }

      @Override
      public Link open() throws PortUnavailable {
        Link link = waiting.isPresent() ? waiting.get() : port.open();
        waiting = Optional.empty();
        return link;
      }
    };
  }
}
