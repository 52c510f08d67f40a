package castwell.web.report.reach;

/** By what an arrow's reach is measured. */
public enum Yardstick {
  momentum,
  energy
}
