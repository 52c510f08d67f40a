package castwell.analysis.cell;

import castwell.analysis.air.AtBow;
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
 * @param atBow how their speeds were taken from the gates to the bow
 */
public record Cell(
    CellName name,
    double massKg,
    SetUp setUp,
    List<CellShot> shots,
    List<SetAside> setAside,
    AtBow atBow) {

  public Cell {
    shots = List.copyOf(shots);
    setAside = List.copyOf(setAside);
  }

  /** A cell whose speeds are those at the gates. */
  public Cell(
      CellName name, double massKg, SetUp setUp, List<CellShot> shots, List<SetAside> setAside) {
    this(name, massKg, setUp, shots, setAside, AtBow.NOT_KNOWN);
  }

  /** The same cell with its speeds at the gates. */
  public Cell atGates() {
    List<CellShot> before = shots.stream().map(shot -> shot.times(1 / atBow.factor())).toList();
    return new Cell(name, massKg, setUp, before, setAside);
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
    return new Cell(name, massKg, setUp, left, aside, atBow);
  }
}
