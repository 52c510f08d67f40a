package castwell.capture.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.English;
import castwell.capture.intake.sheet.CantRead;
import castwell.capture.intake.sheet.Line;
import castwell.capture.intake.sheet.Sheet;
import castwell.capture.intake.sheet.SheetKind;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** CSV (RFC 4180) as spreadsheets and people write it. */
class SheetTest {
  private static final String USUAL = "bow,arrow,speed_fps\nAsh,A1,150.5\n";

  private static Sheet read(SheetKind what, String text) {
    return Sheet.read("a.csv", what, text, Map.of());
  }

  private static void assertRefused(String text, String... told) {
    assertThat(English.refusal(() -> read(SheetKind.SHOTS, text))).contains(told).endsWith(".");
  }

  private static void assertUsual(Sheet sheet) {
    assertThat(sheet.lines()).hasSize(1);
    assertThat(sheet.notRead()).isEmpty();
    Line line = sheet.lines().get(0);
    assertThat(line.words("bow")).contains("Ash");
    assertThat(line.words("arrow")).contains("A1");
    assertThat(line.neededNumber("speed")).isCloseTo(150.5 * 0.3048, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        USUAL,
        "\uFEFFbow,arrow,speed_fps\r\nAsh,A1,150.5\r\n",
        "bow;arrow;speed_fps\nAsh;A1;150,5",
        "bow;arrow;speed_fps\nAsh;A1;150.5\n;;\n\n",
        "\n BOW , Arrow,\"Speed_FPS\" \n\nAsh , A1,\"150.5\"\n,,\n",
        "speed_fps,arrow,bow,\n150.5,A1,Ash\n",
        "bow,arrow,speed_fps\n\"Ash\",\"A1\",1.505e2\n"
      })
  void theSameHoweverItIsWritten(String text) {
    assertUsual(read(SheetKind.SHOTS, text));
  }

  @Test
  void linesAreNumberedAsAnEditorNumbersThem() {
    String text =
        "\nbow,arrow,speed_fps,note\nAsh,A1,150,\"two\nlines\"\n\nAsh,A1,151,\nAsh,A1,152,";
    assertThat(read(SheetKind.SHOTS, text).lines())
        .extracting(Line::number)
        .containsExactly(3, 6, 7);
  }

  /** Factors: NIST SP 811 (2008), appendix B.8. */
  @ParameterizedTest
  @CsvSource({
    "SHOTS, 'bow,arrow,speed_fps', speed, 0.3048",
    "SHOTS, 'bow,arrow,speed_mps', speed, 1",
    "SHOTS, 'bow,arrow,speed_kmh', speed, 0.277777777778",
    "SHOTS, 'bow,arrow,speed_mph', speed, 0.44704",
    "ARROWS, 'arrow,x,mass_gr', mass, 6.479891e-5",
    "ARROWS, 'arrow,x,mass_g', mass, 0.001",
    "ARROWS, 'arrow,x,mass_kg', mass, 1",
    "ARROWS, 'arrow,x,mass_oz', mass, 2.834952e-2",
    "ARROWS, 'arrow,x,mass_lb', mass, 4.535924e-1",
    "FORCE_DRAW, 'bow,state_on,draw_force_lb,draw_length_in', draw_force, 4.448222",
    "FORCE_DRAW, 'bow,state_on,draw_force_n,draw_length_in', draw_force, 1",
    "FORCE_DRAW, 'bow,state_on,draw_force_kgf,draw_length_in', draw_force, 9.80665",
    "FORCE_DRAW, 'bow,state_on,draw_length_in,draw_force_n', draw_length, 0.0254",
    "FORCE_DRAW, 'bow,state_on,draw_length_ft,draw_force_n', draw_length, 0.3048",
    "FORCE_DRAW, 'bow,state_on,draw_length_mm,draw_force_n', draw_length, 0.001",
    "FORCE_DRAW, 'bow,state_on,draw_length_cm,draw_force_n', draw_length, 0.01",
    "FORCE_DRAW, 'bow,state_on,draw_length_m,draw_force_n', draw_length, 1"
  })
  void theHeadingTellsTheUnit(SheetKind what, String headings, String field, double si) {
    Line line = read(what, headings + "\nAsh,A1,1,1").lines().get(0);
    assertThat(line.neededNumber(field)).isCloseTo(si, within(si * 2e-7));
  }

  @Test
  void headingsOfOthersAreReadAsTold() {
    Sheet sheet =
        Sheet.read(
            "a.csv",
            SheetKind.SHOTS,
            "Bow name,Shaft,Speed (m/s)\nAsh,A1,45.8724\n",
            Map.of("bow NAME", "bow", "Shaft", "Arrow", "Speed (m/s)", "speed_mps"));
    assertUsual(sheet);
  }

  @ParameterizedTest
  @CsvSource({
    "Velocity, speed_mps, no heading \"Velocity\"",
    "Speed, speed_furlongs, no column \"speed_furlongs\"",
    "Speed, sped_fps, the nearest is speed_fps"
  })
  void aMapThatLeadsNowhereIsRefused(String theirs, String ours, String told) {
    String sheet = "bow,arrow,Speed\nAsh,A1,9\n";
    assertThat(
            English.refusal(
                () -> Sheet.read("a.csv", SheetKind.SHOTS, sheet, Map.of(theirs, ours))))
        .contains(told);
  }

  @Test
  void headingsThatArentOursAreNamedWithWhatTheyMayBe() {
    Sheet sheet =
        read(SheetKind.ARROWS, "arrow,mass_gr,lenght_in,colour,diameter\nA1,500,29,red,0.3");
    assertThat(sheet.notRead())
        .containsExactly(
            "lenght_in (length_in?)",
            "colour",
            "diameter (say its unit: diameter_in, diameter_ft, diameter_mm, diameter_cm or diameter_m)");
  }

  @Test
  void whatOurOwnExportSaysBesidesIsPassedOver() {
    String text =
        "shot_id,fired_at,device,boot,bow,bow_state,arrow,arrow_mass_gr,speed_fps,front_fps,verdict\n"
            + "x,2026-05-01T12:00:00Z,gate,1,Ash,2026-04-01,A1,500,150,150,clean\n";
    assertThat(read(SheetKind.SHOTS, text).notRead()).isEmpty();
  }

  @Test
  void aSheetThatCantBeReadIsRefusedInOneSentence() {
    assertRefused("", "a.csv is empty", "bow,arrow,speed_fps");
    assertRefused("bow,arrow,speed_fps\n", "no lines");
    assertRefused("bow,arrow\nAsh,A1\n", "speed_fps, speed_mps, speed_kmh or speed_mph", "--map");
    assertRefused("bow,speed_fps,arrow,speed_mps\nAsh,1,A1,1\n", "\"speed_fps\" and \"speed_mps\"");
    assertRefused("bow,arrow,speed_fps,Bow\nAsh,A1,1,Elm\n", "\"bow\" and \"Bow\"");
    assertRefused("bow,arrow,speed_fps\nAsh,A1,150\n\"Ash,A1,151\n", "from line 3", "quotation");
  }

  @ParameterizedTest
  @ValueSource(strings = {"fast", "NaN", "Infinity", "0x10", "1d", "1.2.3", "1e999", "1 5", "--5"})
  void whatIsNoNumberIsNamed(String cell) {
    Line line = read(SheetKind.SHOTS, "bow,arrow,speed_fps\nAsh,A1," + cell).lines().get(0);
    assertThat(English.refusal(() -> line.number("speed")))
        .contains("speed_fps \"" + cell + "\" isn't a number");
  }

  @Test
  void aDecimalCommaIsReadOnlyWhereSemicolonsSeparate() {
    Line quoted = read(SheetKind.SHOTS, "bow,arrow,speed_fps\nAsh,A1,\"150,5\"").lines().get(0);
    assertThatExceptionOfType(CantRead.class).isThrownBy(() -> quoted.number("speed"));
    Line thousands = read(SheetKind.SHOTS, "bow;arrow;speed_fps\nAsh;A1;1.150,5").lines().get(0);
    assertThatExceptionOfType(CantRead.class).isThrownBy(() -> thousands.number("speed"));
  }

  @Test
  void aCommaTooManyIsNamed() {
    List<Line> lines =
        read(SheetKind.SHOTS, "bow,arrow,speed_fps\nAsh,A1,150,5\nAsh,A1,1,,").lines();
    assertThat(English.refusal(() -> lines.get(0).refuseTooMany()))
        .contains("4 cells under 3 headings");
    lines.get(1).refuseTooMany();
  }
}
