package castwell.capture.view.station;

import castwell.analysis.speed.Budget.Share;
import java.util.Arrays;
import java.util.Locale;

/** What makes a speed uncertain, with the key of the settings that says how much. */
public enum BudgetSource {
  TRIGGER("trigger", "trigger_scatter_mm"),
  TICK("tick", ""),
  GATE_SPACING("gate spacing", "spacing_u_mm"),
  TICK_RATE("tick rate", "oscillator"),
  OBLIQUE_PATH("oblique path", "path_degrees"),
  UNPARALLEL_GATES("gates out of parallel", "out_of_parallel_mm, off_measured_mm"),
  RAILS_TEMPERATURE("rails' temperature", "rails_ppm_per_k, rails_k"),
  UNLIKE_LATENCIES("gates' latencies", "latency_unlike_us"),
  DRAG_BETWEEN("drag between the gates", "drag_percent_per_m");

  private final String source;
  private final String setting;

  BudgetSource(String source, String setting) {
    this.source = source;
    this.setting = setting;
  }

  static BudgetSource of(Share share) {
    return Arrays.stream(values())
        .filter(known -> known.source.equals(share.source()))
        .findFirst()
        .orElseThrow();
  }

  /** Empty where it is the board's own. */
  public String setting() {
    return setting;
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
