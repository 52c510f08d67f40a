package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import castwell.capture.Until;
import castwell.capture.measure.Measures;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A page's questions, asked by its own forms in a real browser. */
@Tag("browser")
@Timeout(300)
class QuestionsTest {
  @TempDir Path folder;
  private Browser browser;

  @BeforeEach
  void open() {
    browser = new Browser();
  }

  @AfterEach
  void close() {
    browser.close();
  }

  private Visit visit(Served served, String path) {
    return new Visit(browser, served.at(path), Workbench.PHONE, ColorScheme.LIGHT);
  }

  private static void ask(Visit visit, String field) {
    visit.by("form:has([name=%s]) button.main".formatted(field)).first().click();
    visit.page().waitForLoadState(); // the answer's own forms send by script
  }

  @Test
  void whatReachesWhatABowAndItsArrowGaveOrATypedEnergy() {
    try (Served served = Workbench.serve(folder)) {
      Workbench.fill(served);
      try (Visit visit = visit(served, "/reach")) {
        visit.by("[name=like_bow]").selectOption("Hazel");
        visit.by("[name=like_arrow]").selectOption("Cedar");
        ask(visit, "like_bow");
        assertThat(visit.by("#answer")).containsText("what Hazel gives Cedar");
        visit.by("[name=energy]").fill("34,5");
        ask(visit, "energy");
        assertThat(visit.by("#answer")).containsText("34.5 ft lbf of energy");
        visit.assertUndisturbed();
      }
    }
  }

  @Test
  void anotherBowsReworkAndAPlanThatGoesToTheRange() {
    try (Served served = Workbench.serve(folder)) {
      Workbench.fill(served);
      try (Visit visit = visit(served, "/rework")) {
        visit.by("select[name=bow]").selectOption("Hazel");
        ask(visit, "bow");
        assertThat(visit.by("#answer .answer")).containsText("Hazel");
        visit.page().navigate(served.at("/plan").toString());
        visit.by("select[name=bow]").selectOption("Rowan");
        visit.by("[name=change]").fill("2.5");
        ask(visit, "change");
        assertThat(visit.by(".answer")).containsText("a change of 2.5 ft/s");
        visit.page().waitForLoadState();
        visit.by("form[data-send='POST /api/plans'] button.main").click();
        visit.page().waitForURL(Pattern.compile(".*/(\\?.*)?$"));
        assertThat(visit.by("#plan-bow")).containsText("from Rowan");
        visit.assertUndisturbed();
      }
    }
  }

  @Test
  void gatesMeasuredAnewAreLookedAtBeforeAnybodySaysYes() {
    TypedBoard board = new TypedBoard();
    try (Served served = Served.at(folder, board.port())) {
      board.answer();
      served.commands().bows().add("Yew", java.time.Instant.EPOCH, 220, 0.69, "");
      served.commands().arrows().add("Light", 0.03, Measures.none());
      served.commands().tag("range", Optional.of("Yew"), Optional.of("Light"), "test");
      for (int i = 1; i <= 2; i++) {
        int wanted = i;
        board.arrow(45, 0.74);
        Until.holds(
            i + " shots",
            () -> served.store().read(t -> t.shots().latest("range", 9)).size() == wanted);
      }
      String session = served.store().read(t -> t.sessions().all().get(0).name());
      try (Visit visit = visit(served, "/sessions/" + session)) {
        visit.by("[name=spacing]").fill("615.7"); // 1 % more, and so is every speed
        ask(visit, "spacing");
        assertThat(visit.by("#gates table")).containsText("Yew");
        assertThat(visit.by(".shot-list b").first()).containsText("147."); // 45 m/s is 147.6 ft/s
        visit.page().waitForLoadState();
        visit.by("form[data-send$='/calibrations'] button.main").click();
        assertThat(visit.by("#bar")).isVisible();
        assertThat(visit.by(".shot-list b").first()).containsText("149.");
        visit.assertUndisturbed();
      }
    }
  }
}
