package castwell.capture.view.request;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import castwell.capture.command.Refused;
import castwell.capture.view.Request;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RequestReaderTest {
  record Point(double atIn) implements Request {}

  record Part(OptionalDouble massGr, Optional<String> why) {}

  record Whole(
      String name,
      boolean retired,
      Optional<Boolean> counts,
      OptionalInt turn,
      List<String> control,
      Map<String, String> map,
      List<Point> points,
      Optional<List<Point>> more,
      Optional<Point> from,
      @JsonUnwrapped Part part,
      @JsonProperty("do") Optional<String> word)
      implements Request {}

  private static Whole read(String json) {
    return RequestReader.read(json.getBytes(UTF_8), Whole.class);
  }

  @Test
  void whatIsOptionalMayBeLeftOut() {
    assertThat(read("{\"name\":\"A\",\"retired\":true,\"counts\":null,\"points\":[]}"))
        .isEqualTo(
            new Whole(
                "A",
                true,
                Optional.empty(),
                OptionalInt.empty(),
                List.of(),
                Map.of(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                new Part(OptionalDouble.empty(), Optional.empty()),
                Optional.empty()));
  }

  @Test
  void everythingIsReadInItsPlace() {
    assertThat(
            read(
                """
                {"name": "A", "retired": false, "counts": false, "turn": 3, "control": ["B"],
                 "map": {"x": "y"}, "points": [{"at_in": 8}], "more": [], "from": {"at_in": 1e1},
                 "mass_gr": 500, "why": "so", "do": "skip"}"""))
        .isEqualTo(
            new Whole(
                "A",
                false,
                Optional.of(false),
                OptionalInt.of(3),
                List.of("B"),
                Map.of("x", "y"),
                List.of(new Point(8)),
                Optional.of(List.of()),
                Optional.of(new Point(10)),
                new Part(OptionalDouble.of(500), Optional.of("so")),
                Optional.of("skip")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "[] | refused.no_object",
        "{ | refused.no_json",
        "{} {} | refused.no_json",
        "{\"name\":\"A\",\"name\":\"B\"} | refused.no_json",
        "{\"nmae\":\"A\"} | refused.no_field|nmae|name, retired, counts, turn, control, map, points, more, from, mass_gr, why, do",
        "{\"retired\":true} | refused.field_missing|name",
        "{\"name\":null} | refused.field_missing|name",
        "{\"name\":7} | refused.field_text|name",
        "{\"name\":\"A\"} | refused.field_boolean|retired",
        "{\"name\":\"A\",\"retired\":1} | refused.field_boolean|retired",
        "{\"name\":\"A\",\"retired\":null} | refused.field_true_or_false|retired",
        "{\"name\":\"A\",\"retired\":true} | refused.field_boolean|counts",
        "OK,\"turn\":1.5} | refused.field_whole|turn",
        "OK,\"control\":\"B\"} | refused.field_texts|control",
        "OK,\"control\":null} | refused.field_texts|control",
        "OK,\"control\":[1]} | refused.field_texts|control",
        "OK,\"map\":{\"x\":1}} | refused.field_texts_by_name|map",
        "OK} | refused.field_objects|points",
        "OK,\"points\":{}} | refused.field_objects|points",
        "OK,\"points\":[1]} | refused.no_object",
        "OK,\"points\":[{}]} | refused.field_missing|at_in",
        "OK,\"points\":[{\"at_in\":\"8\"}]} | refused.field_number|at_in",
        "OK,\"points\":[{\"at_in\":1e999}]} | refused.field_number|at_in",
        "OK,\"points\":[],\"more\":null} | refused.field_objects|more",
        "OK,\"points\":[],\"from\":[]} | refused.no_object",
        "OK,\"points\":[],\"mass_gr\":true} | refused.field_number|mass_gr",
      })
  void whatIsWrongIsSaid(String json, String why) {
    String whole = json.replace("OK", "{\"name\":\"A\",\"retired\":true,\"counts\":null");
    assertThatThrownBy(() -> read(whole)).isInstanceOf(Refused.class).hasMessageContaining(why);
  }
}
