package castwell.capture.word;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Dates by ISO 8601; Berlin is two hours ahead of UTC in May (IANA's time zone database). */
class WhenTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  @ParameterizedTest
  @CsvSource({
    "2026-05-01T14:30, 2026-05-01T12:30:00Z",
    "2026-05-01 14:30, 2026-05-01T12:30:00Z",
    "2026-05-01T14:30:05, 2026-05-01T12:30:05Z",
    "2026-05-01T14:30:05.5, 2026-05-01T12:30:05.5Z",
    "2026-05-01T14:30Z, 2026-05-01T14:30:00Z",
    "2026-05-01T14:30:05.25+05:30, 2026-05-01T09:00:05.25Z"
  })
  void anInstantIsInTheLocalZoneUnlessItSaysItsOwn(String text, Instant instant) {
    assertThat(When.parse(text, BERLIN).orElseThrow().instant()).contains(instant);
  }

  @Test
  void aDayBeginsAtTheLocalMidnight() {
    When day = When.parse("2026-05-01", BERLIN).orElseThrow();
    assertThat(day).isEqualTo(new When(LocalDate.of(2026, 5, 1), Optional.empty()));
    assertThat(day.begin(BERLIN)).isEqualTo(Instant.parse("2026-04-30T22:00:00Z"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1.5.2026",
        "05/01/2026",
        "2026-02-30",
        "2026-05-01T25:00",
        "yesterday",
        "2026",
        "0026-05-01",
        "26-05-01",
        "2226-05-01"
      })
  void anythingElseIsNoDate(String text) {
    assertThat(When.parse(text, BERLIN)).isEmpty();
  }
}
