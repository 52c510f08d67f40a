package castwell.capture.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.English;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.measure.ArrowMeasure;
import castwell.capture.measure.BowMeasure;
import castwell.capture.measure.Measures;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Rack.Named;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bows with their states, and arrows, from a sheet. */
class RackIntakeTest {
  private static final String BOWS =
      "bow,state_on,draw_weight_lb,draw_length_in,nock_to_nock_in,string_follow_in,brace_height_in,mass_lb,wood,tip_width_mm,string_mass_gr,done\n";

  @TempDir Path folder;
  private IntakeBench bench;

  @BeforeEach
  void open() {
    bench = new IntakeBench(folder);
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private List<BowState> states(String bow) {
    return bench.store().read(t -> t.rack().states(t.rack().bow(bow).orElseThrow().id()));
  }

  private List<Arrow> arrows() {
    return bench.store().read(t -> t.rack().arrows());
  }

  @Test
  void aBowsStatesAreTakenInWithAllThatWasMeasured() {
    Taken taken =
        bench.take(
            SheetKind.BOWS,
            BOWS
                + "Ash,2026-04-01,50,28,66,1.5,6.25,1.3,ash,12,110,tillered\nAsh,2026-05-01T14:30,48,28,,,,,,,,\"tips, lightened\"\n");
    assertThat(English.say(taken.phrase())).isEqualTo("2 bow states taken in, 0 already there.");
    BowState first = states("Ash").get(0);
    assertThat(first.since()).isEqualTo(Instant.parse("2026-03-31T22:00:00Z"));
    assertThat(first.drawWeightN()).isCloseTo(222.411, within(1e-3)); // 50 lbf
    assertThat(first.measures().number(BowMeasure.NOCK_TO_NOCK).orElseThrow())
        .isCloseTo(1.6764, within(1e-9));
    assertThat(first.measures().number(BowMeasure.MASS).orElseThrow())
        .isCloseTo(0.589670, within(1e-6));
    assertThat(first.measures().words(BowMeasure.WOOD)).contains("ash");
    assertThat(first.measures().number(BowMeasure.STRING_MASS).orElseThrow())
        .isCloseTo(0.00712788, within(1e-8));
    assertThat(states("Ash").get(1).done()).isEqualTo("tips, lightened");
  }

  @Test
  void aStateThatIsThereIsLeftAloneAndAnotherHolds() {
    String csv = BOWS + "Ash,2026-04-01,50,28,66,1.5,6.25,1.3,ash,12,110,tillered\n";
    bench.take(SheetKind.BOWS, csv);
    assertThat(bench.take(SheetKind.BOWS, csv).already()).isEqualTo(1);
    assertThat(bench.take(SheetKind.BOWS, csv.replace(",50,", ",51,")).taken()).isEqualTo(1);
    assertThat(states("Ash")).hasSize(1);
    assertThat(states("Ash").get(0).drawWeightN()).isCloseTo(226.859, within(1e-3)); // 51 lbf
  }

  @Test
  void whatALineDoesntTellStaysAsItWas() {
    bench.take(SheetKind.BOWS, BOWS + "Ash,2026-04-01,50,28,66,1.5,6.25,1.3,ash,12,110,tillered\n");
    BowState before = states("Ash").get(0);
    bench.take(
        SheetKind.BOWS, "bow,state_on,draw_weight_lb,draw_length_in\nash,2026-04-01,51,28\n");
    BowState now = states("Ash").get(0);
    assertThat(now.measures()).isEqualTo(before.measures());
    assertThat(now.done()).isEqualTo("tillered");
    bench.take(SheetKind.ARROWS, "arrow,mass_gr,length_in,point\nA1,500,29,field\n");
    bench.take(SheetKind.ARROWS, "arrow,mass_gr,note\na1,501,heavier\n");
    assertThat(arrows()).hasSize(1);
    assertThat(arrows().get(0).lengthM().orElseThrow()).isCloseTo(0.7366, within(1e-9));
    assertThat(arrows().get(0).measures().words(ArrowMeasure.POINT)).contains("field");
    assertThat(arrows().get(0).measures().words(ArrowMeasure.NOTE)).contains("heavier");
  }

  @Test
  void arrowsAreTakenInOnce() {
    String csv = "arrow,mass_g,length_cm,diameter_mm,point,note\nA1,32.4,74,8,field,\nA2,40,,,,\n";
    assertThat(English.say(bench.take(SheetKind.ARROWS, csv).phrase()))
        .isEqualTo("2 arrows taken in, 0 already there.");
    assertThat(bench.take(SheetKind.ARROWS, csv).already()).isEqualTo(2);
    assertThat(arrows().get(0).massKg()).isCloseTo(0.0324, within(1e-12));
    assertThat(arrows().get(1).lengthM()).isEmpty();
  }

  @Test
  void aTillerAndATipsThicknessAreTakenInInEitherUnit() {
    bench.take(
        SheetKind.BOWS,
        "bow,state_on,draw_weight_lb,draw_length_in,tiller_mm,tip_thickness_in\nAsh,2026-04-01,50,28,-3,0.5\n");
    Measures<BowMeasure> measures = states("Ash").get(0).measures();
    assertThat(measures.number(BowMeasure.TILLER).orElseThrow()).isCloseTo(-0.003, within(1e-12));
    assertThat(measures.number(BowMeasure.TIP_THICKNESS).orElseThrow())
        .isCloseTo(0.0127, within(1e-12));
  }

  @Test
  void aSpineIsTakenInWithItsSpanAndWeightOrAsUsual() {
    String csv =
        "arrow,mass_gr,spine_mil,spine_span_in,spine_weight_lb\nA1,500,500,,\nA2,500,620,26,2\nA3,500,,26,2\n";
    bench.take(SheetKind.ARROWS, csv);
    assertThat(bench.take(SheetKind.ARROWS, csv).already()).isEqualTo(3);
    assertThat(spine(0)).isEqualTo("0.0127 m, 0.7112 m, 8.630 N"); // 0.5 in, 28 in, 1.94 lbf
    assertThat(spine(1)).isEqualTo("0.0157 m, 0.6604 m, 8.896 N"); // 0.62 in, 26 in, 2 lbf
    assertThat(arrows().get(2).measures()).isEqualTo(Measures.none());
  }

  private String spine(int arrow) {
    Measures<ArrowMeasure> measures = arrows().get(arrow).measures();
    return String.format(
        Locale.ROOT,
        "%.4f m, %.4f m, %.3f N",
        measures.number(ArrowMeasure.SPINE).orElseThrow(),
        measures.number(ArrowMeasure.SPINE_SPAN).orElseThrow(),
        measures.number(ArrowMeasure.SPINE_WEIGHT).orElseThrow());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          tiller_in,5|A tiller lies between -50 and 50 mm, not at 127
          tip_thickness_mm,1|A tip's thickness lies between 2 and 60 mm, not at 1
          """)
  void aMeasureThatNoBowHasIsNamed(String column, String told) {
    String[] parts = column.split(",");
    assertThat(
            bench.refused(
                SheetKind.BOWS,
                "bow,state_on,draw_weight_lb,draw_length_in,%s\nAsh,2026-04-01,50,28,%s\n"
                    .formatted(parts[0], parts[1])))
        .singleElement()
        .asString()
        .startsWith("2: " + told);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ,2026-04-01,50,28,|bow is empty.
          Ash,,50,28,|state_on is empty.
          Ash,spring,50,28,|state_on "spring" isn't a date
          Ash,2026-04-01,,28,|draw_weight_lb is empty.
          Ash,2026-04-01,500,28,|A draw weight lies between 1 and 250 lb, not at 500
          Ash,2026-04-01,50,71,|A draw length lies between 8 and 40 in, not at 71
          Ash,2026-04-01,50,28,60|A brace height lies between 2 and 15 in, not at 60
          yew,2026-04-01,50,28,6|Line 2 is about yew of 2026-04-01 too: leave one of them out.
          """)
  void eachBadLineOfBowsIsNamed(String line, String told) {
    List<String> said =
        bench.refused(
            SheetKind.BOWS,
            "bow,state_on,draw_weight_lb,draw_length_in,brace_height_in\nYew,2026-04-01,60,28,\n"
                + line
                + "\n");
    assertThat(said).singleElement().asString().startsWith("3: " + told);
    assertThat(bench.store().<List<Named>>read(t -> t.rack().bowNames())).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ,500,|arrow is empty.
          A1,,|mass_gr is empty.
          A1,5,|An arrow's mass lies between 50 and 5000 gr, not at 5
          A1,500,290|An arrow's length lies between 10 and 45 in, not at 290
          a2,500,|Line 2 is about a2 too: leave one of them out.
          """)
  void eachBadLineOfArrowsIsNamed(String line, String told) {
    List<String> said =
        bench.refused(SheetKind.ARROWS, "arrow,mass_gr,length_in\nA2,600,\n" + line + "\n");
    assertThat(said).singleElement().asString().startsWith("3: " + told);
    assertThat(arrows()).isEmpty();
  }
}
