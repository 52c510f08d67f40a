package castwell.capture.view.data;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/** A description of a CSV file's columns (W3C Metadata Vocabulary for Tabular Data, 2015). */
public record CsvMetadata(
    @JsonProperty("@context") String context,
    String url,
    @JsonProperty("tableSchema") TableSchema tableSchema) {
  public static final String CONTEXT = "http://www.w3.org/ns/csvw";

  public record TableSchema(List<Described> columns) {}

  /** The description of a column. */
  public record Described(
      String name,
      String titles,
      String datatype,
      @JsonProperty("dc:description") String description) {}
}
