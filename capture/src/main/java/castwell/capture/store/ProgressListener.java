package castwell.capture.store;

/** Hears how much of a long task is done. */
@FunctionalInterface
public interface ProgressListener {
  void reached(long done, long all);
}
