package castwell.capture.view.broker;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.view.Column;
import castwell.capture.view.Columns;
import castwell.capture.view.shot.ShotView;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The schemas say what is published, and a shot's what its columns say. */
class PayloadSchemaTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @Test
  void everyColumnIsInTheSchemaWithItsTypeItsWordsAndItsUnit() throws Exception {
    JsonNode schema = JSON.readTree(Payload.SHOT.schema());
    List<String> names = new ArrayList<>(List.of("event"));
    for (Column<ShotView> column : Columns.of(ShotView.class)) {
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

  @ParameterizedTest
  @EnumSource(Payload.class)
  void eachHasATitleAndTellsItsTopicAndLetsNothingElseIn(Payload payload) throws Exception {
    JsonNode schema = JSON.readTree(payload.schema());
    String topic = "castwell/STATION/" + payload.named().replaceFirst("^tags-", "tags/");
    assertThat(schema.path("title").asText()).isEqualTo(payload.title()).isNotBlank();
    assertThat(schema.path("description").asText()).contains("Topic " + topic + ",");
    assertThat(schema.path("additionalProperties").isBoolean()).isTrue();
    assertThat(schema.path("additionalProperties").asBoolean()).isFalse();
    assertThat(schema.path("required")).hasSameSizeAs(schema.path("properties"));
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
