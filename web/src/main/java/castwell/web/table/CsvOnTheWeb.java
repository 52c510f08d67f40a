package castwell.web.table;

import castwell.capture.view.Column;
import castwell.capture.view.Json;
import castwell.capture.view.data.CsvMetadata;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Describes a CSV file's columns in the W3C Metadata Vocabulary for Tabular Data (2015). */
public final class CsvOnTheWeb {
  private CsvOnTheWeb() {}

  /** Writes NAME.csv-metadata.json beside NAME.csv, where readers look for it. */
  public static <R> void describe(Path csv, List<? extends Column<? extends R>> columns)
      throws IOException {
    Path metadata = csv.resolveSibling(csv.getFileName() + "-metadata.json");
    List<CsvMetadata.Described> described = new ArrayList<>();
    for (Column<? extends R> column : columns) {
      described.add(describe(column));
    }
    Files.writeString(
        metadata,
        Json.indented(
            new CsvMetadata(
                CsvMetadata.CONTEXT,
                csv.getFileName().toString(),
                new CsvMetadata.TableSchema(described))));
  }

  private static CsvMetadata.Described describe(Column<?> column) {
    String unit = column.unit().isEmpty() ? "" : ", in " + column.unit();
    return new CsvMetadata.Described(
        column.name(), column.name(), column.type().datatype(), column.description() + unit);
  }
}
