package castwell.capture.view;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.view.health.Level;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class JsonTest {
  private static final Instant NOON = Instant.parse("2026-05-02T12:00:00Z");

  private enum Stage {
    SET_ASIDE
  }

  private record Part(OptionalDouble meanFps, int n) {}

  private record Whole(
      Instant firedAt,
      Optional<String> bow,
      OptionalInt lightA,
      Stage stage,
      Level level,
      Interval95 ci95Fps,
      @JsonUnwrapped Part own,
      @JsonUnwrapped @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<Part> more,
      @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<List<String>> sentences) {}

  @Test
  void whatIsNotKnownIsNullAndWhatMayBeLeftOutIs() {
    Whole whole =
        new Whole(
            NOON,
            Optional.empty(),
            OptionalInt.empty(),
            Stage.SET_ASIDE,
            Level.CANT_TELL,
            new Interval95(OptionalDouble.of(1.5), OptionalDouble.empty()),
            new Part(OptionalDouble.of(150), 3),
            Optional.empty(),
            Optional.empty());
    assertThat(Json.text(whole))
        .isEqualTo(
            "{\"fired_at\":\"2026-05-02T12:00:00Z\",\"bow\":null,\"light_a\":null,"
                + "\"stage\":\"set aside\",\"level\":\"can't tell\",\"ci95_fps\":[1.5,null],"
                + "\"mean_fps\":150.0,\"n\":3}");
  }

  @Test
  void whatIsKnownStandsInItsPlace() {
    assertThat(Json.text(new Part(OptionalDouble.empty(), 0)))
        .isEqualTo("{\"mean_fps\":null,\"n\":0}");
  }

  @Test
  void whatALaterCastwellTellsBesidesIsPassedOver() throws IOException {
    String later = "{\"mean_fps\":150.25,\"n\":3,\"of_tomorrow\":{}}";
    assertThat(Json.read(later, Part.class)).isEqualTo(new Part(OptionalDouble.of(150.25), 3));
  }
}
