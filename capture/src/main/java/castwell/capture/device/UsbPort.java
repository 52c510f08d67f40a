package castwell.capture.device;

/** The port of a USB device, wherever it is plugged in. */
record UsbPort(PortSpec.ByUsb spec, SerialPorts ports) implements Port {

  @Override
  public String name() {
    return spec.toString();
  }

  @Override
  public Link open() throws PortUnavailable {
    PortUnavailable why = PortUnavailable.of("port.usb_absent", name());
    for (PluggedIn candidate : ports.pluggedIn()) {
      if (candidate.matches(spec)) {
        try {
          return ports.claim(candidate.path());
        } catch (PortUnavailable e) {
          why = e;
        }
      }
    }
    throw why;
  }
}
