package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measure;
import castwell.web.text.Texts;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Measures of bows and arrows as pages show them and ask for them, in either units. */
@Timeout(60)
class MeasuresOnPagesTest {
  private static final HttpClient CLIENT = HttpClient.newHttpClient();

  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void open() {
    served = Served.withoutBoard(folder, "range");
    send(
        "/api/bows",
        """
        {"name":"Rowan","draw_weight_lb":50,"draw_length_in":28,"nock_to_nock_in":66,"string_follow_in":1.2,
         "brace_height_in":6.2,"mass_lb":1.3,"wood":"elm","tip_width_mm":12,"string_mass_gr":90,
         "tiller_mm":-3,"tip_thickness_mm":10.5}""");
    send(
        "/api/arrows",
        """
        {"name":"Pine","mass_gr":500,"length_in":29.5,"diameter_in":0.344,"spine_mil":500,"point":"field",
         "note":"old"}""");
    send("/api/bows", "{\"name\":\"Bare\",\"draw_weight_lb\":50,\"draw_length_in\":28}");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static void send(String path, String body) {
    Asked asked = Asked.send("POST", served.at(path), body);
    assertThat(asked.status()).as("%s", asked.json()).isEqualTo(201);
  }

  /** A page without the spaces between its tags. */
  private static String page(String path, String units) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(served.at(path))
            .header("Accept", "text/html")
            .header("Cookie", "castwell-units=" + units)
            .build();
    return CLIENT.send(request, BodyHandlers.ofString()).body().replaceAll(">\\s+<", "><");
  }

  private static String fact(String name, String value) {
    return "<dt>%s</dt><dd>%s</dd>".formatted(name, value);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          trade | nock to nock  | 66 in
          si    | nock to nock  | 167.6 cm
          trade | string follow | 1.2 in
          si    | string follow | 30 mm
          trade | tip width     | 12 mm
          trade | wood          | elm
          trade | tiller        | -3 mm
          si    | tiller        | -3 mm
          trade | tip thickness | 10.5 mm
          si    | tip thickness | 10.5 mm
          """)
  void aBowsPageAndCardTellWhatWasMeasured(String units, String name, String value)
      throws IOException, InterruptedException {
    assertThat(page("/bows/Rowan", units)).contains(fact(name, value));
    assertThat(page("/bows/Rowan/card", units)).contains(fact(name, value));
    assertThat(page("/bows/Bare", units)).doesNotContain("<dt>" + name + "</dt>");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          trade | length           | 29.5 in
          trade | diameter         | 0.344 in
          trade | spine            | 500 mil
          si    | spine            | 12.7 mm
          trade | spine's span     | 28 in
          si    | spine's span     | 71.1 cm
          trade | spine's weight   | 1.94 lb
          si    | spine's weight   | 8.63 N
          trade | point            | field
          """)
  void theArrowsPageTellsWhatWasMeasured(String units, String name, String value)
      throws IOException, InterruptedException {
    assertThat(page("/arrows", units)).contains(fact(name, value));
  }

  static Stream<BowMeasure> bow() {
    return Stream.of(BowMeasure.values());
  }

  static Stream<ArrowMeasure> arrow() {
    return Stream.of(ArrowMeasure.values());
  }

  @ParameterizedTest
  @MethodSource("bow")
  void everyMeasureOfABowIsAskedFor(BowMeasure measure) throws IOException, InterruptedException {
    asksFor(page("/bows/Rowan", "trade"), measure);
    asksFor(page("/rack", "trade"), measure);
  }

  @ParameterizedTest
  @MethodSource("arrow")
  void everyMeasureOfAnArrowIsAskedFor(ArrowMeasure measure)
      throws IOException, InterruptedException {
    asksFor(page("/arrows", "trade"), measure);
  }

  private static void asksFor(String page, Measure measure) {
    String label = Texts.english().say(measure.label());
    assertThat(page)
        .contains("<label><span>%s</span><input name=\"%s\"".formatted(label, measure.field()));
  }

  @Test
  void aSpineIsTakenAsUsualUnlessOneSaysOtherwise() throws IOException, InterruptedException {
    String page = page("/arrows", "si");
    assertThat(page).containsPattern("name=\"spine_span_in\"[^>]*value=\"71.12\"");
    assertThat(page).containsPattern("name=\"spine_weight_lb\"[^>]*value=\"8.62955\"");
  }
}
