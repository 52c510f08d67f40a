package castwell.capture.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.analysis.bow.ForceDrawCurve.Point;
import castwell.capture.English;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.store.Rack.BowState;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Force-draw curves, a point a line. */
class ForceDrawIntakeTest {
  private static final String HEADINGS = "bow,state_on,draw_length_in,draw_force_lb,let_down_lb\n";
  private static final String TWO_CURVES =
      HEADINGS
          + "Ash,2026-04-01,12,10,9\nAsh,2026-05-01,12,11,\nAsh,2026-04-01,20,30,28\nAsh,2026-05-01,20,29,\nAsh,2026-04-01,28,50,50\nAsh,2026-05-01,28,48,\n";

  @TempDir Path folder;
  private IntakeBench bench;

  @BeforeEach
  void open() {
    bench = new IntakeBench(folder).withRack();
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private List<Point> curve(int state) {
    return bench
        .store()
        .read(
            t -> {
              long bow = t.rack().bow("Ash").orElseThrow().id();
              BowState of = t.rack().states(bow).get(state);
              return t.forceDraws().last(bow, of.since());
            });
  }

  @Test
  void eachStateHasItsOwnCurve() {
    assertThat(English.say(bench.take(SheetKind.FORCE_DRAW, TWO_CURVES).phrase()))
        .isEqualTo("2 force-draw curves taken in, 0 already there.");
    assertThat(curve(0)).hasSize(3);
    Point last = curve(0).get(2);
    assertThat(last.drawLengthM()).isCloseTo(0.7112, within(1e-9));
    assertThat(last.drawN()).isCloseTo(222.411, within(1e-3)); // 50 lbf
    assertThat(last.letDownN().orElseThrow()).isCloseTo(222.411, within(1e-3));
    assertThat(curve(1).get(0).letDownN()).isEmpty();
  }

  @Test
  void aCurveThatIsThereIsLeftAloneAndAnotherHolds() {
    bench.take(SheetKind.FORCE_DRAW, TWO_CURVES);
    Taken again = bench.take(SheetKind.FORCE_DRAW, TWO_CURVES.replace(",28,50,50", ",28,51,51"));
    assertThat(again.taken()).isEqualTo(1);
    assertThat(again.already()).isEqualTo(1);
    assertThat(curve(0).get(2).drawN()).isCloseTo(226.859, within(1e-3)); // 51 lbf
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          Elm,2026-04-01,24,40,|bow "Elm" isn't on the rack: mend it, or import the bows first.
          Ash,2026-04-02,24,40,|state_on "2026-04-02" is no state of Ash, which has 2026-04-01, 2026-05-01: mend it
          Ash,2026-04-01,20,40,|draw_length_in "20" isn't longer than line 3's
          Ash,2026-04-01,24,-4,|A draw force lies between 0 and 250 lb, not at -4
          Ash,2026-04-01,24,40,999|A let-down force lies between 0 and 250 lb, not at 999
          Ash,2026-04-01,,40,|draw_length_in is empty.
          Ash,2026-04-01,24,strong,|draw_force_lb "strong" isn't a number
          """)
  void eachBadLineIsNamed(String line, String told) {
    List<String> said =
        bench.refused(
            SheetKind.FORCE_DRAW,
            HEADINGS
                + "Ash,2026-04-01,12,10,\nAsh,2026-04-01,20,30,\n"
                + line
                + "\nAsh,2026-04-01,28,50,\n");
    assertThat(said).singleElement().asString().startsWith("4: " + told);
    assertThat(curve(0)).isEmpty();
  }

  @Test
  void tooFewPointsAreRefusedAtTheFirst() {
    List<String> said =
        bench.refused(
            SheetKind.FORCE_DRAW, HEADINGS + "Yew,2026-04-01,12,10,\nYew,2026-04-01,20,30,\n");
    assertThat(said)
        .singleElement()
        .asString()
        .startsWith("2: This can't be: a force-draw curve needs three points at least");
  }
}
