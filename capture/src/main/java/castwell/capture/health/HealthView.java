package castwell.capture.health;

import castwell.analysis.wording.Wording;
import castwell.capture.view.health.Level;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** How everything is, as JSON objects; null is "has none". */
public record HealthView(Checkup checkup, Wording wording) {

  /** One station's own items, and what all stations of this computer share. */
  public Map<String, Object> of(String station) {
    Health both =
        new Health(
            Stream.concat(
                    checkup.of(station).items().stream(), checkup.ofComputer().items().stream())
                .toList());
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("station", station);
    view.put("at", checkup.now().toString());
    view.putAll(view(both));
    return view;
  }

  /** Every station, and what they share. */
  public Map<String, Object> all() {
    Health computer = checkup.ofComputer();
    Level worst = computer.level();
    List<Map<String, Object>> stations = new ArrayList<>();
    for (String station : checkup.stations()) {
      Health health = checkup.of(station);
      worst = worst.compareTo(health.level()) > 0 ? worst : health.level();
      Map<String, Object> view = new LinkedHashMap<>();
      view.put("station", station);
      view.putAll(view(health));
      stations.add(view);
    }
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("at", checkup.now().toString());
    view.put("level", worst.word());
    view.put("computer", view(computer));
    view.put("stations", stations);
    return view;
  }

  private Map<String, Object> view(Health health) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("level", health.level().word());
    view.put("items", health.items().stream().map(this::view).toList());
    return view;
  }

  private Map<String, Object> view(Item item) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("name", item.name());
    view.put("title", wording.say(item.title()));
    view.put("level", item.level().word());
    view.put("sentence", wording.say(item.sentence()));
    view.put("remedy", wording.say(item.remedy()));
    view.put("measured", item.measured().map(this::view).orElse(null));
    return view;
  }

  private Map<String, Object> view(Measured measured) {
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("value", measured.value());
    view.put("unit", wording.say(measured.told()));
    view.put("u", measured.u().isPresent() ? measured.u().getAsDouble() : null);
    view.put("n", measured.n().isPresent() ? measured.n().getAsLong() : null);
    return view;
  }
}
