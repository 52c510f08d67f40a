package castwell.capture.rehearsal;

import castwell.analysis.wording.Phrase;
import castwell.capture.device.Link;
import castwell.capture.device.Port;
import castwell.capture.device.PortUnavailable;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** A port with a pretended board behind it, for whoever has no board yet. */
public final class RehearsalPort implements Port {
  private final RehearsalRange range;
  private final LongSupplier micros;
  private boolean open;

  /**
   * @param micros the host's monotonic clock
   * @param tags what is tagged now; with nothing tagged the first bow shoots the first arrow
   */
  public RehearsalPort(
      RehearsalSettings settings, LongSupplier micros, Supplier<Optional<RehearsalTags>> tags) {
    this.range = new RehearsalRange(settings, tags, micros.getAsLong());
    this.micros = micros;
  }

  @Override
  public String name() {
    return "rehearsal";
  }

  @Override
  public synchronized Link open() throws PortUnavailable {
    if (open) {
      throw new PortUnavailable(Phrase.of("port.rehearsing"));
    }
    open = true;
    // What the board said before the port was open is dropped, since nobody heard it.
    range.takeDue(micros.getAsLong());
    return new RehearsalLink(range, micros, this::closed);
  }

  private synchronized void closed() {
    open = false;
  }
}
