package castwell.capture.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.English;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.store.Rack.Arrow;
import castwell.capture.store.Rack.BowState;
import castwell.capture.store.Rack.Named;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
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
    assertThat(first.measures().nockToNockM().orElseThrow()).isCloseTo(1.6764, within(1e-9));
    assertThat(first.measures().massKg().orElseThrow()).isCloseTo(0.589670, within(1e-6));
    assertThat(first.measures().wood()).contains("ash");
    assertThat(first.measures().stringMassKg().orElseThrow()).isCloseTo(0.00712788, within(1e-8));
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
    assertThat(arrows().get(0).point()).contains("field");
    assertThat(arrows().get(0).note()).contains("heavier");
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
