package castwell.capture.intake;

import castwell.capture.intake.sheet.CantRead;
import castwell.capture.intake.sheet.Line;
import castwell.capture.store.Rack;
import castwell.capture.store.Rack.Named;
import castwell.capture.store.Transaction;
import castwell.capture.word.Nearest;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Finds known bows and arrows by name, regardless of case. */
final class RackNames {
  private final Map<String, Long> bows = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
  private final Map<String, Long> arrows = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);

  RackNames(Transaction t) {
    List<Named> named = t.rack().bowNames();
    named.forEach(bow -> bows.put(bow.name(), bow.id()));
    for (Rack.Arrow arrow : t.rack().arrows()) {
      arrows.put(arrow.name(), arrow.id());
    }
  }

  long bow(Line line, String name) {
    return Optional.ofNullable(bows.get(name))
        .orElseThrow(() -> unknown(line, "bow", name, bows.keySet()));
  }

  long arrow(Line line, String name) {
    return Optional.ofNullable(arrows.get(name))
        .orElseThrow(() -> unknown(line, "arrow", name, arrows.keySet()));
  }

  private static CantRead unknown(Line line, String column, String name, Collection<String> there) {
    String key = "sheet.no_" + column;
    return Nearest.meant(name, there)
        .map(meant -> new CantRead(key + "_but", line.named(column), meant))
        .orElseGet(() -> new CantRead(key, line.named(column)));
  }
}
