package castwell.web.metrics;

import io.prometheus.metrics.model.snapshots.CounterSnapshot;
import io.prometheus.metrics.model.snapshots.CounterSnapshot.CounterDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot.GaugeDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.InfoSnapshot;
import io.prometheus.metrics.model.snapshots.InfoSnapshot.InfoDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricSnapshot;
import io.prometheus.metrics.model.snapshots.MetricSnapshots;
import io.prometheus.metrics.model.snapshots.StateSetSnapshot;
import io.prometheus.metrics.model.snapshots.StateSetSnapshot.StateSetDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.Unit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/** Metric families, filled in the course of one scrape. A family without points is left out. */
final class Families {
  private final Map<String, GaugeSnapshot.Builder> gauges = new LinkedHashMap<>();
  private final Map<String, CounterSnapshot.Builder> counters = new LinkedHashMap<>();
  private final Map<String, StateSetSnapshot.Builder> states = new LinkedHashMap<>();
  private final MetricSnapshots.Builder others = MetricSnapshots.builder();

  /**
   * @param labels names and values by turns
   */
  void gauge(String name, String help, double value, String... labels) {
    gauges
        .computeIfAbsent(name, n -> GaugeSnapshot.builder().name(n).help(help))
        .dataPoint(GaugeDataPointSnapshot.builder().value(value).labels(Labels.of(labels)).build());
  }

  /**
   * @param name ends in the unit
   */
  void gauge(String name, String help, Unit unit, double value, String... labels) {
    gauges
        .computeIfAbsent(name, n -> GaugeSnapshot.builder().name(n).help(help).unit(unit))
        .dataPoint(GaugeDataPointSnapshot.builder().value(value).labels(Labels.of(labels)).build());
  }

  /**
   * @param name without <code>_total</code>, which the format adds
   */
  void counter(String name, String help, double value, String... labels) {
    counters
        .computeIfAbsent(name, n -> CounterSnapshot.builder().name(n).help(help))
        .dataPoint(
            CounterDataPointSnapshot.builder().value(value).labels(Labels.of(labels)).build());
  }

  <E extends Enum<E>> void state(
      String name, String help, E[] states, E now, Function<E, String> word, String... labels) {
    var point = StateSetDataPointSnapshot.builder().labels(Labels.of(labels));
    for (E state : states) {
      point.state(word.apply(state), state == now);
    }
    this.states
        .computeIfAbsent(name, n -> StateSetSnapshot.builder().name(n).help(help))
        .dataPoint(point.build());
  }

  void info(String name, String help, String... labels) {
    others.metricSnapshot(
        InfoSnapshot.builder()
            .name(name)
            .help(help)
            .dataPoint(InfoDataPointSnapshot.builder().labels(Labels.of(labels)).build())
            .build());
  }

  MetricSnapshots all() {
    gauges.values().forEach(gauge -> add(gauge.build()));
    counters.values().forEach(counter -> add(counter.build()));
    states.values().forEach(state -> add(state.build()));
    return others.build();
  }

  private void add(MetricSnapshot snapshot) {
    others.metricSnapshot(snapshot);
  }
}
