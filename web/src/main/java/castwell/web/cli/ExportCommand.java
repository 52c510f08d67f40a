package castwell.web.cli;

import castwell.capture.export.EdgeColumns;
import castwell.capture.export.FigureColumns;
import castwell.capture.export.RackColumns;
import castwell.capture.export.ShotColumns;
import castwell.capture.store.Store;
import castwell.web.table.CsvOnTheWeb;
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
  /** What can be exported. */
  enum What {
    shots,
    edges,
    figures,
    bows,
    arrows,
    force_draw;

    @Override
    public String toString() {
      return name().replace('_', '-');
    }
  }

  /** For the option. */
  static final class OneOfWhat extends OneOf<What> {
    OneOfWhat() {
      super(What.class);
    }
  }

  @Spec private CommandSpec spec;
  @ParentCommand private Castwell castwell;

  @Option(
      names = "--what",
      converter = OneOfWhat.class,
      description =
          "shots: a row a passage. edges: the raw ticks. figures: each shot under every calibration it ever had. bows: a row a state. arrows. force-draw: a row a point. Default: ${DEFAULT-VALUE}.")
  private What what = What.shots;

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
    try (Store store = Store.openToRead(castwell.data().orDefault())) {
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

  private void write(Store store, Writer writer) throws IOException {
    store.read(
        t -> {
          TableWriter.write(table(), t, format, writer);
          return null;
        });
    writer.flush();
  }

  private Table<?> table() {
    return switch (what) {
      case shots ->
          new Table<>(
              new ShotColumns(ZoneId.systemDefault()).columns(), (t, row) -> t.shots().each(row));
      case edges -> new Table<>(EdgeColumns.COLUMNS, (t, row) -> t.raw().each(row));
      case figures -> new Table<>(FigureColumns.COLUMNS, (t, row) -> t.figures().each(row));
      case bows ->
          new Table<>(
              RackColumns.bows(ZoneId.systemDefault()),
              (t, row) ->
                  t.rack().bowNames().forEach(bow -> t.rack().states(bow.id()).forEach(row)));
      case arrows -> new Table<>(RackColumns.ARROWS, (t, row) -> t.rack().arrows().forEach(row));
      case force_draw ->
          new Table<>(
              RackColumns.forceDraw(ZoneId.systemDefault()), (t, row) -> t.forceDraws().each(row));
    };
  }
}
