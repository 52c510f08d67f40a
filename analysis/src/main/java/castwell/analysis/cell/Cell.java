package castwell.analysis.cell;

import castwell.analysis.wording.Phrase;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The shots of one bow state with one arrow in one session.
 *
 * @param massKg the arrow's mass
 * @param shots the shots that count, the earliest first
 * @param setAside the shots that don't count
 */
public record Cell(
    CellName name, double massKg, SetUp setUp, List<CellShot> shots, List<SetAside> setAside) {

  public Cell {
    shots = List.copyOf(shots);
    setAside = List.copyOf(setAside);
  }

  public double[] speedsMps() {
    return shots.stream().mapToDouble(CellShot::speedMps).toArray();
  }

  /** The same cell with these shots set aside as well. */
  public Cell without(Set<String> shotIds, Phrase reason) {
    List<SetAside> aside = new ArrayList<>(setAside);
    List<CellShot> left = new ArrayList<>();
    for (CellShot shot : shots) {
      if (shotIds.contains(shot.id())) {
        aside.add(new SetAside(shot.id(), List.of(reason)));
      } else {
        left.add(shot);
      }
    }
    return new Cell(name, massKg, setUp, left, aside);
  }
}
