package castwell.web.metrics;

import castwell.capture.health.Checkup;
import castwell.capture.health.Vitals;
import io.prometheus.metrics.expositionformats.ExpositionFormatWriter;
import io.prometheus.metrics.expositionformats.OpenMetricsTextFormatWriter;
import io.prometheus.metrics.expositionformats.PrometheusTextFormatWriter;
import io.prometheus.metrics.model.snapshots.Unit;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The health of everything as metrics: OpenMetrics 1.0, or the older Prometheus text format 0.0.4.
 * They are made at each scrape from what there is, and nothing is stored for them.
 */
public final class Metrics {
  private final Checkup checkup;
  private final String version;
  private final Supplier<Map<String, Long>> refused;

  /** The two text formats. */
  public enum Format {
    OPEN_METRICS("application/openmetrics-text", OpenMetricsTextFormatWriter.create()),
    PROMETHEUS("text/plain", PrometheusTextFormatWriter.create());

    private final String mediaType;
    private final ExpositionFormatWriter writer;

    Format(String mediaType, ExpositionFormatWriter writer) {
      this.mediaType = mediaType;
      this.writer = writer;
    }

    /** The format that the reader prefers; OpenMetrics where it doesn't say. */
    public static Format of(Optional<String> accept) {
      AcceptedTypes accepted = new AcceptedTypes(accept.orElse("*/*"));
      return accepted.quality(PROMETHEUS.mediaType) > accepted.quality(OPEN_METRICS.mediaType)
          ? PROMETHEUS
          : OPEN_METRICS;
    }

    public String contentType() {
      return writer.getContentType();
    }
  }

  /**
   * @param refused how many requests were refused, by kind
   */
  public Metrics(Checkup checkup, String version, Supplier<Map<String, Long>> refused) {
    this.checkup = checkup;
    this.version = version;
    this.refused = refused;
  }

  public String text(Format format) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      format.writer.write(bytes, families().all());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toString(StandardCharsets.UTF_8);
  }

  private Families families() {
    Families families = new Families();
    families.info("castwell", "The program.", "version", version);
    for (String station : checkup.stations()) {
      Vitals vitals = checkup.vitals(station);
      StationMetrics.add(families, vitals);
      StationMetrics.judged(families, station, Checkup.judge(vitals));
    }
    StationMetrics.judged(families, "", checkup.ofComputer());
    computer(families);
    refused
        .get()
        .forEach(
            (kind, count) ->
                families.counter(
                    "castwell_refused",
                    "What was refused over HTTP since the program's start.",
                    count,
                    "kind",
                    kind));
    return families;
  }

  private void computer(Families families) {
    checkup
        .store()
        .room()
        .ifPresent(
            room -> {
              families.gauge(
                  "castwell_disk_free_bytes",
                  "Free space for the data folder.",
                  Unit.BYTES,
                  room.freeBytes());
              families.gauge(
                  "castwell_database_bytes",
                  "Size of the database with its log.",
                  Unit.BYTES,
                  room.databaseBytes());
            });
    checkup
        .store()
        .read(t -> t.upkeep().passages())
        .forEach(
            (station, passages) ->
                families.gauge(
                    "castwell_stored_passages",
                    "Passages in the store, counting or not.",
                    passages,
                    "station",
                    station));
    checkup
        .store()
        .read(t -> t.upkeep().lastBackup())
        .ifPresent(
            last ->
                families.gauge(
                    "castwell_last_backup_timestamp_seconds",
                    "When the last backup was made and read back.",
                    Unit.SECONDS,
                    last.toEpochMilli() / 1e3));
  }
}
