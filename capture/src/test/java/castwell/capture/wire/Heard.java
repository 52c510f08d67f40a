package castwell.capture.wire;

import java.util.ArrayList;
import java.util.List;

/** A reader of the wire and all that came out of it. */
final class Heard {
  final Faults faults = new Faults();
  final List<Sentence> sentences = new ArrayList<>();
  private final WireReader reader = new WireReader(faults);

  Heard hear(String text) {
    return hear(Lines.bytes(text));
  }

  Heard hear(byte[] bytes) {
    sentences.addAll(reader.accept(bytes));
    return this;
  }

  Heard reconnect() {
    reader.reset();
    return this;
  }
}
