package castwell.web.table;

import castwell.capture.view.Column;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** W3C Metadata Vocabulary for Tabular Data (2015): what a CSV file's columns are. */
public final class CsvOnTheWeb {
  private CsvOnTheWeb() {}

  /** Writes NAME.csv-metadata.json beside NAME.csv, where readers look for it. */
  public static <R> void describe(Path csv, List<? extends Column<? extends R>> columns)
      throws IOException {
    Path metadata = csv.resolveSibling(csv.getFileName() + "-metadata.json");
    List<Map<String, Object>> described = new ArrayList<>();
    for (Column<? extends R> column : columns) {
      described.add(describe(column));
    }
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("@context", "http://www.w3.org/ns/csvw");
    root.put("url", csv.getFileName().toString());
    root.put("tableSchema", Map.of("columns", described));
    JsonMapper.builder()
        .build()
        .writerWithDefaultPrettyPrinter()
        .writeValue(metadata.toFile(), root);
  }

  private static Map<String, Object> describe(Column<?> column) {
    Map<String, Object> described = new LinkedHashMap<>();
    described.put("name", column.name());
    described.put("titles", column.name());
    described.put("datatype", column.type().datatype());
    String unit = column.unit().isEmpty() ? "" : ", in " + column.unit();
    described.put("dc:description", column.description() + unit);
    return described;
  }
}
