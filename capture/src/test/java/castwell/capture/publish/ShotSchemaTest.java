package castwell.capture.publish;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.analysis.wording.Phrase;
import castwell.capture.store.Shot;
import castwell.capture.view.Column;
import castwell.capture.view.shot.ShotColumns;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The schema of a shot says what the columns say. */
class ShotSchemaTest {

  @Test
  void everyColumnIsInTheSchemaWithItsTypeItsWordsAndItsUnit() throws Exception {
    JsonNode schema = JsonMapper.builder().build().readTree(Schemas.text("shot"));
    List<String> names = new ArrayList<>(List.of("event"));
    for (Column<Shot> column : new ShotColumns(ZoneOffset.UTC, Phrase::key).columns()) {
      names.add(column.name());
      JsonNode property = schema.path("properties").path(column.name());
      String unit = column.unit().isEmpty() ? "" : " (" + column.unit() + ")";
      assertThat(property.path("description").asText()).isEqualTo(column.description() + unit);
      assertThat(types(property).get(0)).as(column.name()).isEqualTo(type(column.type()));
    }
    assertThat(schema.path("properties").fieldNames())
        .toIterable()
        .containsExactlyElementsOf(names);
    assertThat(schema.path("required"))
        .extracting(JsonNode::asText)
        .containsExactlyElementsOf(names);
  }

  private static List<String> types(JsonNode property) {
    JsonNode type = property.path("type");
    List<String> types = new ArrayList<>();
    if (type.isTextual()) {
      types.add(type.asText());
    }
    type.forEach(one -> types.add(one.asText()));
    return types;
  }

  /** CSV on the Web's name of it, as JSON Schema's. */
  private static String type(Column.Type type) {
    return type == Column.Type.DATE_TIME ? "string" : type.datatype();
  }
}
