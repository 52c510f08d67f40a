package castwell.capture.device;

/** The port at a path; a symbolic link there is followed anew at each opening. */
record PathPort(PortSpec.ByPath spec, SerialPorts ports) implements Port {

  @Override
  public String name() {
    return spec.toString();
  }

  @Override
  public Link open() throws PortUnavailable {
    return ports.claim(spec.path());
  }
}
