package castwell.web.report.plan;

import static castwell.analysis.unit.Units.METRES_PER_FOOT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.command.Refused;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.view.report.plan.DaysDesignView;
import castwell.capture.view.report.plan.PlanReportView;
import castwell.web.report.FourBows;
import castwell.web.report.TypedSeason;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Chances and half widths were reckoned by an independent program in R. */
@Tag("slow")
class PlanOverDaysTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();

  @TempDir Path folder;
  private TypedSeason season;

  @BeforeEach
  void open() {
    season = new TypedSeason(folder);
  }

  @AfterEach
  void close() {
    season.close();
  }

  private PlanReportView plan(Wish wish) {
    return season.read(t -> PlanReport.of(t, TypedSeason.ZONE, wish).data());
  }

  /** 1.5 % of Elm, of which a shot scatters by 0.9 ft/s. */
  private static Wish wish(OptionalDouble sessions, OptionalDouble shots, String... controls) {
    return Wish.of(
        "Elm",
        List.of(controls),
        NONE,
        OptionalDouble.of(1.5),
        NONE,
        OptionalDouble.of(0.9),
        List.of("A400", "A500", "A650"),
        sessions,
        shots,
        NONE);
  }

  @Test
  void theFewestSessionsThatDo() {
    FourBows.shoot(season);
    PlanReportView plan = plan(wish(NONE, NONE));

    DaysDesignView cheapest = plan.overDays().cheapest().orElseThrow();
    assertThat(cheapest.sessionsBefore()).isEqualTo(1);
    assertThat(cheapest.sessionsAfter()).isEqualTo(1);
    assertThat(cheapest.controls()).isEqualTo(1);
    assertThat(cheapest.shotsEach()).isEqualTo(3);
    assertThat(cheapest.shotsInAll()).isEqualTo(36);
    assertThat(cheapest.chance()).isCloseTo(0.804507, within(1e-3));
    assertThat(plan.changePercent()).isCloseTo(1.5, within(1e-12));
    assertThat(plan.changeFps()).isCloseTo(0.015 * 144.852533, within(1e-6));
    assertThat(plan.overDays().asked()).isEmpty();
    // R's power.t.test, as far as its search goes: delta 1.5 %, sd 0.9 ft/s, power 0.8.
    assertThat(plan.shotsPerCellExact()).isCloseTo(3.929377, within(1e-4));
    assertThat(plan.order()).hasSize(3 * 4);
    assertThat(plan.sentences().get(0))
        .startsWith(
            "To see a change of 2.2 ft/s (1.5 %) with a chance of 80 %, shoot 1 session before the"
                + " rework and as many after, 1 other bow shot along and left as it is, with 3"
                + " different arrows, each 3 times from each bow in a session.")
        .contains("Speeds are those at the gates");
    assertThat(plan.sentences().toString())
        .contains("more days, not more shots", "Within one afternoon", "4 shots of each arrow");
  }

  @Test
  void theChanceOfWhatIsAskedFor() {
    FourBows.shoot(season);
    PlanReportView plan = plan(wish(OptionalDouble.of(1), OptionalDouble.of(4), "Yew", "Oak"));

    DaysDesignView asked = plan.overDays().asked().orElseThrow();
    assertThat(asked.controls()).isEqualTo(2);
    assertThat(asked.chance()).isCloseTo(0.915291, within(1e-3));
    assertThat(asked.halfWidthPercent()).isCloseTo(0.892410, within(1e-3));
    assertThat(asked.floorPercent()).isCloseTo(0.686463, within(1e-3));
    assertThat(plan.order()).hasSize(3 * 3 * 4);
    assertThat(plan.sentences().toString()).contains("in 92 of 100 cases").doesNotContain("miss");
  }

  @Test
  void moreShotsDontHelpWhereDaysAreMissing() {
    FourBows.shoot(season);
    PlanReportView plan = plan(wish(OptionalDouble.of(1), OptionalDouble.of(10)));

    assertThat(plan.overDays().asked().orElseThrow().chance()).isCloseTo(0.319788, within(1e-3));
    assertThat(plan.sentences().toString())
        .contains("in 32 of 100 cases: more shots don't help, days are missing");
  }

  /** Without a season days differ as is assumed: D 0.6 %, W 0.35 % in the middle. */
  @Test
  void beforeAnyShotDaysAreAssumed() {
    season.take(
        SheetKind.BOWS,
        "bow,state_on,draw_weight_lb,draw_length_in\nElm,2026-04-01,50,27\nYew,2026-04-01,50,27\n");
    season.take(SheetKind.ARROWS, "arrow,mass_gr\nA400,400\nA500,500\nA650,650\n");
    PlanReportView plan = plan(wish(NONE, NONE));

    assertThat(plan.changeFps()).isCloseTo(0.015 * 150, within(1e-9));
    assertThat(plan.overDays().cheapest().orElseThrow().sessionsBefore()).isGreaterThan(1);
    assertThat(plan.sentences().toString())
        .contains("still mostly assumed", "so 150 ft/s is assumed");
  }

  @Test
  void aChangeInOneWayAndWholeNumbersOfDays() {
    FourBows.shoot(season);
    OptionalDouble two = OptionalDouble.of(2);
    refused(
        "two_changes",
        Wish.of("Elm", List.of(), two, two, NONE, NONE, List.of(), NONE, NONE, NONE));
    OptionalDouble all = OptionalDouble.of(-100);
    refused(
        "all_speed", Wish.of("Elm", List.of(), NONE, all, NONE, NONE, List.of(), NONE, NONE, NONE));
    assertThatThrownBy(() -> wish(OptionalDouble.of(1.5), NONE)).isInstanceOf(Refused.class);
    assertThatThrownBy(() -> wish(NONE, OptionalDouble.of(0))).isInstanceOf(Refused.class);
    Wish feet = Wish.of("Elm", List.of(), two, NONE, NONE, NONE, List.of(), NONE, NONE, NONE);
    assertThat(feet.changeMps().orElseThrow()).isEqualTo(2 * METRES_PER_FOOT);
    assertThat(plan(feet).changePercent()).isCloseTo(200 / 144.852533, within(1e-6));
  }

  private void refused(String why, Wish wish) {
    assertThatThrownBy(() -> plan(wish))
        .isInstanceOfSatisfying(
            Refused.class, e -> assertThat(e.phrase().key()).isEqualTo("refused." + why));
  }
}
