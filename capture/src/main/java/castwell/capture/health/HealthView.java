package castwell.capture.health;

import castwell.analysis.wording.Wording;
import castwell.capture.view.health.ItemView;
import castwell.capture.view.health.Level;
import castwell.capture.view.health.MeasuredView;
import castwell.capture.view.health.PartHealth;
import castwell.capture.view.health.StationHealth;
import castwell.capture.view.health.StationPart;
import castwell.capture.view.health.WholeHealth;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Writes the health of everything as it leaves the program. */
public record HealthView(Checkup checkup, Wording wording) {

  /**
   * The health of one station: its own items, and those that all stations of this computer share.
   */
  public StationHealth of(String station) {
    Health both =
        new Health(
            Stream.concat(
                    checkup.of(station).items().stream(), checkup.ofComputer().items().stream())
                .toList());
    return new StationHealth(station, checkup.now(), part(both));
  }

  /** The health of every station, and the items that they share. */
  public WholeHealth all() {
    Health computer = checkup.ofComputer();
    Level worst = computer.level();
    List<StationPart> stations = new ArrayList<>();
    for (String station : checkup.stations()) {
      Health health = checkup.of(station);
      worst = worst.compareTo(health.level()) > 0 ? worst : health.level();
      stations.add(new StationPart(station, part(health)));
    }
    return new WholeHealth(checkup.now(), worst, part(computer), stations);
  }

  private PartHealth part(Health health) {
    return new PartHealth(health.level(), health.items().stream().map(this::item).toList());
  }

  private ItemView item(Item item) {
    return new ItemView(
        item.name(),
        wording.say(item.title()),
        item.level(),
        wording.say(item.sentence()),
        wording.say(item.remedy()),
        item.measured().map(this::measured));
  }

  private MeasuredView measured(Measured measured) {
    return new MeasuredView(
        measured.value(), wording.say(measured.told()), measured.u(), measured.n());
  }
}
