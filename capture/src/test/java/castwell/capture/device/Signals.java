package castwell.capture.device;

import castwell.capture.Until;
import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/** Keeps what a reader tells. */
final class Signals implements Consumer<Signal> {
  private final List<Signal> all = new CopyOnWriteArrayList<>();

  @Override
  public void accept(Signal signal) {
    all.add(signal);
  }

  List<Signal> all() {
    return all;
  }

  <T extends Signal> List<T> of(Class<T> kind) {
    return all.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  byte[] bytes() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    of(Signal.Received.class).forEach(received -> bytes.writeBytes(received.bytes()));
    return bytes.toByteArray();
  }

  void await(Class<? extends Signal> kind, int count) {
    Until.holds(count + " x " + kind, () -> of(kind).size() >= count);
  }
}
