package castwell.capture.device;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The first port whose board answers; the one that did so last is asked first. */
final class AnyPort implements Port {
  private final SerialPorts ports;
  private final BoardCall call;
  private volatile String foundPath = "";

  AnyPort(SerialPorts ports, BoardCall call) {
    this.ports = ports;
    this.call = call;
  }

  @Override
  public String name() {
    String auto = new PortSpec.Anywhere().toString();
    return foundPath.isEmpty() ? auto : auto + " (" + foundPath + ")";
  }

  @Override
  public Link open() throws PortUnavailable {
    List<String> passedOver = new ArrayList<>();
    for (PluggedIn candidate : candidates()) {
      try {
        Link link = ports.claim(candidate.path());
        Optional<Link> board = call.answered(link);
        if (board.isPresent()) {
          foundPath = candidate.path();
          return board.get();
        }
        link.close();
        passedOver.add(candidate.path() + " doesn't answer as a board");
      } catch (PortUnavailable e) {
        passedOver.add(e.getMessage().replaceFirst("[;.].*", ""));
      }
      if (Thread.currentThread().isInterrupted()) {
        break;
      }
    }
    throw new PortUnavailable(
        "No board was found: "
            + (passedOver.isEmpty() ? "no serial port is free" : String.join("; ", passedOver))
            + "; plug the board in, or name its port.");
  }

  private List<PluggedIn> candidates() {
    return ports.pluggedIn().stream()
        .filter(candidate -> !ports.isPromised(candidate))
        .sorted(Comparator.comparing(candidate -> !candidate.path().equals(foundPath)))
        .toList();
  }
}
