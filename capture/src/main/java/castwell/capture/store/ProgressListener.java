package castwell.capture.store;

/** Hears how much of something that takes long is done. */
@FunctionalInterface
public interface ProgressListener {
  void reached(long done, long all);
}
