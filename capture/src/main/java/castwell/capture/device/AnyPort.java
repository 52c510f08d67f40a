package castwell.capture.device;

import castwell.analysis.wording.Phrase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The first port at which a board answers; the port that answered last is asked first. */
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
    List<Phrase> passedOver = new ArrayList<>();
    for (PluggedIn candidate : candidates()) {
      try {
        Link link = ports.claim(candidate.path());
        Optional<Link> board = call.ask(link);
        if (board.isPresent()) {
          foundPath = candidate.path();
          return board.get();
        }
        link.close();
        passedOver.add(Phrase.of("port.no_board", candidate.path()));
      } catch (PortUnavailable e) {
        passedOver.add(e.phrase());
      }
      if (Thread.currentThread().isInterrupted()) {
        break;
      }
    }
    throw passedOver.stream()
        .reduce((before, next) -> Phrase.of("port.and", before, next))
        .map(all -> PortUnavailable.of("port.passed_over", all))
        .orElseGet(() -> PortUnavailable.of("port.none"));
  }

  private List<PluggedIn> candidates() {
    return ports.pluggedIn().stream()
        .filter(candidate -> !ports.isPromised(candidate))
        .sorted(Comparator.comparing(candidate -> !candidate.path().equals(foundPath)))
        .toList();
  }
}
