package castwell.web.report;

/** By what an arrow's reach is measured. */
public enum Yardstick {
  momentum,
  energy
}
