package castwell.web.cli;

import castwell.capture.store.Store;
import castwell.web.table.CsvOnTheWeb;
import castwell.web.table.Exported;
import castwell.web.table.Table;
import castwell.web.table.TableWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

@Command(
    name = "export",
    description = "Write the shots, their raw edges or all their figures as a table.")
final class ExportCommand implements Callable<Integer> {
  /** Lets the option take one of the tables' names. */
  static final class OneOfExported extends OneOf<Exported> {
    OneOfExported() {
      super(Exported.class);
    }
  }

  @Spec private CommandSpec spec;
  @ParentCommand private Castwell castwell;

  @Option(
      names = "--what",
      converter = OneOfExported.class,
      description =
          "shots: a row a passage. edges: the raw ticks. figures: each shot under every calibration it ever had. bows: a row a state. arrows. force-draw: a row a point. budget: what makes a speed uncertain, the largest first. Default: ${DEFAULT-VALUE}.")
  private Exported what = Exported.shots;

  @Option(
      names = "--station",
      paramLabel = "NAME",
      description =
          "Only what was shot there, for shots, edges, figures and budget. Default: everywhere.")
  private Optional<String> station = Optional.empty();

  @Option(names = "--format", description = "csv or json. Default: ${DEFAULT-VALUE}.")
  private TableWriter.Format format = TableWriter.Format.csv;

  @Option(names = "--out", paramLabel = "FILE", description = "Write to a file.")
  private Path out;

  @Option(
      names = "--csvw",
      description = "Write the W3C's metadata for CSV on the Web beside the file.")
  private boolean csvw;

  @Override
  public Integer call() throws IOException {
    if (csvw && (out == null || format != TableWriter.Format.csv)) {
      throw new ParameterException(
          spec.commandLine(), "--csvw describes a CSV file: name one with --out FILE.");
    }
    if (station.isPresent() && !what.isOfShots()) {
      throw new ParameterException(
          spec.commandLine(),
          "--station narrows shots, edges, figures and budget; the rack is everybody's.");
    }
    try (Store store = Store.openToRead(castwell.data().orDefault())) {
      checkStation(store);
      if (out == null) {
        PrintStream standard = System.out;
        write(store, new OutputStreamWriter(standard, StandardCharsets.UTF_8));
        return standard.checkError() ? 1 : 0;
      }
      try (Writer file = Files.newBufferedWriter(out)) {
        write(store, file);
      }
      if (csvw) {
        CsvOnTheWeb.describe(out, table().columns());
      }
    }
    return 0;
  }

  /** Refuses a station that doesn't exist. A misspelt one would look like one where nobody shot. */
  private void checkStation(Store store) {
    List<String> known = store.read(t -> t.sessions().stations());
    if (station.isPresent() && !known.contains(station.get())) {
      throw new SaidPlainly(
          "--station: nothing was shot at a station named %s; there are %s."
              .formatted(station.get(), known.isEmpty() ? "none yet" : String.join(", ", known)));
    }
  }

  private void write(Store store, Writer writer) throws IOException {
    store.read(
        t -> {
          TableWriter.write(table(), t, format, writer);
          return null;
        });
    writer.flush();
  }

  private Table<?> table() {
    return what.table(station, ZoneId.systemDefault());
  }
}
