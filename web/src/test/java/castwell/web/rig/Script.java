package castwell.web.rig;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What is to happen to a board in the rig, put in order by time. */
final class Script {
  private static final double METRES_PER_FOOT = 0.3048;

  /** As Castwell's settings have it where nobody says otherwise. */
  static final double SPACING_M = 0.6096;

  private final List<Event> events = new ArrayList<>();

  private record Event(long nanos, String deed) {}

  Script at(double seconds, String deed) {
    events.add(new Event(Math.round(seconds * 1e9), deed));
    return this;
  }

  /** An arrow whose point is at gate A then. */
  Script arrow(double seconds, double speedFps, double lengthM) {
    double speed = speedFps * METRES_PER_FOOT;
    double toB = SPACING_M / speed;
    double long_ = lengthM / speed;
    return at(seconds, "A blocked")
        .at(seconds + toB, "B blocked")
        .at(seconds + long_, "A clear")
        .at(seconds + toB + long_, "B clear");
  }

  /** A gate that sees a lamp: dark and bright in turn. */
  Script flicker(char gate, double from, double to, double hertz) {
    boolean blocked = true;
    for (double t = from; t < to || !blocked; t += 0.5 / hertz) {
      at(t, gate + (blocked ? " blocked" : " clear"));
      blocked = !blocked;
    }
    return this;
  }

  Path writeTo(Path file) {
    List<String> lines =
        events.stream()
            .sorted(Comparator.comparingLong(Event::nanos))
            .map(
                event ->
                    "%d.%09d %s"
                        .formatted(
                            event.nanos / 1_000_000_000, event.nanos % 1_000_000_000, event.deed))
            .toList();
    try {
      return Files.write(file, lines);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
