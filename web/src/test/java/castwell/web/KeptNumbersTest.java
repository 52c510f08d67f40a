package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sheet shows few digits; what is left as it was keeps all it had. */
@Tag("browser")
@Timeout(300)
class KeptNumbersTest {
  private static final double POUNDS = 52.253719;
  private static final double INCHES = 27.123456;
  private static final double ROUNDING = 1e-9; // of a double turned to SI and back

  @TempDir static Path folder;
  private static Served served;
  private static Browser browser;

  @BeforeAll
  static void open() {
    served = Served.withoutBoard(folder, "range");
    browser = new Browser();
  }

  @AfterAll
  static void close() {
    browser.close();
    served.close();
  }

  private static void send(String method, String path, String body) {
    assertThat(Asked.send(method, served.at(path), body).status()).isBetween(200, 299);
  }

  // 1 in is 2.54 cm exactly: NIST SP 811 (2008), appendix B.
  @ParameterizedTest
  @CsvSource({"trade, 52.25, 27.12, 28, 28 in", "si, 232.4, 68.89, 71.12, 71.1 cm"})
  void aNumberLeftAsItWasIsSentAsItWas(
      String units, String weight, String length, String typed, String shown) {
    send(
        "POST",
        "/api/bows",
        """
        {"name":"%s","state_on":"2026-03-01","draw_weight_lb":%s,"draw_length_in":%s}"""
            .formatted(units, POUNDS, INCHES));
    send("PUT", "/api/tags", "{\"station\":\"range\",\"bow\":\"%s\"}".formatted(units));
    try (Visit visit = Visit.onAPhone(browser, served)) {
      visit.by("[data-units=" + units + "]").click();
      openState(visit, units);
      assertThat(visit.by("details[open] [name=draw_weight_lb]")).hasValue(weight);
      assertThat(visit.by("details[open] [name=draw_length_in]")).hasValue(length);
      visit.fill("done", "new string");
      visit.button("from now on").click();
      assertThat(visit.by(".bar")).containsText(units + " is now");
      assertBow(units, POUNDS, INCHES);

      openState(visit, units);
      visit.fill("draw_length_in", typed);
      visit.button("from now on").click();
      assertThat(visit.by("#bow")).containsText(shown);
      assertBow(units, POUNDS, 28);
    }
  }

  private static void openState(Visit visit, String bow) {
    assertThat(visit.by("#bow")).containsText(bow);
    visit.by("#bow").click();
    visit.button("something was done to " + bow).click();
  }

  private static void assertBow(String name, double pounds, double inches) {
    JsonNode tags = Asked.get(served.at("/api/range")).json().path("tags");
    assertThat(tags.path("bow").asText()).isEqualTo(name);
    assertThat(tags.path("draw_weight_lb").asDouble()).isCloseTo(pounds, within(ROUNDING));
    assertThat(tags.path("draw_length_in").asDouble()).isCloseTo(inches, within(ROUNDING));
  }
}
