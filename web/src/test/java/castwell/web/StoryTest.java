package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import castwell.capture.Until;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A maker's day, on the pages alone: from an empty rack to a rework's answer and a printed card.
 * The bows throw by the virtual-mass model with numbers made up here; what the pages say is
 * compared with what went in.
 */
@Tag("browser")
@Timeout(300)
class StoryTest {
  private static final double GRAIN_KG = 64.79891e-6;
  private static final double[] LOOSE = {0.15, -0.2, 0.05, -0.1, 0.1};
  private static final List<String> ARROWS = List.of("Light", "Middle", "Heavy");
  private static final double[] GRAINS = {420, 520, 640};

  @TempDir Path folder;
  private final TypedBoard board = new TypedBoard();
  private Hands hands;
  private int shots;

  private static double mps(double energyJ, double virtualGrains, double grains) {
    return Math.sqrt(2 * energyJ / ((grains + virtualGrains) * GRAIN_KG));
  }

  private void send(Locator form) {
    hands.press(form.locator("button.main"));
  }

  /** Another page, by the menu at its foot. */
  private void go(Visit visit, String path) {
    if (URI.create(visit.page().url()).getPath().equals(path)) {
      return;
    }
    hands.press(visit.by(".menu a[href='%s']".formatted(path)));
    visit.page().waitForURL("**" + path);
  }

  private void addBow(Visit visit, String name, String pounds) {
    go(visit, "/rack");
    Locator form = visit.by("form[data-send='POST /api/bows']");
    if (!form.isVisible()) {
      hands.press(visit.by("summary:has-text('add a bow')"));
    }
    hands.fill(form.locator("[name=name]"), name);
    hands.fill(form.locator("[name=draw_weight_lb]"), pounds);
    hands.fill(form.locator("[name=draw_length_in]"), "27");
    send(form);
    assertThat(visit.by("h1")).hasText(name);
    assertThat(visit.by("#bar")).containsText(name + " is on the rack.");
  }

  private void addArrow(Visit visit, String name, double grains) {
    go(visit, "/arrows");
    Locator form = visit.by("form[data-send='POST /api/arrows']");
    if (!form.isVisible()) {
      hands.press(visit.by("summary:has-text('add an arrow')"));
    }
    hands.fill(form.locator("[name=name]"), name);
    hands.fill(form.locator("[name=mass_gr]"), String.valueOf(Math.round(grains)));
    send(form);
    assertThat(visit.by("#arrows")).containsText(name);
  }

  private void shoot(Served served, String bow, double energyJ, double virtualGrains) {
    for (int arrow = 0; arrow < GRAINS.length; arrow++) {
      served.commands().tag("range", Optional.of(bow), Optional.of(ARROWS.get(arrow)), "test");
      for (double loose : LOOSE) {
        board.arrow(mps(energyJ, virtualGrains, GRAINS[arrow]) + loose, 0.74);
        shot(served);
      }
    }
  }

  private void shot(Served served) {
    int wanted = ++shots;
    Until.holds(
        wanted + " shots",
        () ->
            served
                    .store()
                    .read(
                        t ->
                            t.sessions().all().stream()
                                .mapToInt(s -> t.shots().tally(s.id()).passages())
                                .sum())
                == wanted);
  }

  @Test
  void fromAnEmptyRackToWhatTheReworkDidAndAPrintedCard() throws IOException {
    tell(visit -> Hands.tapping());
  }

  @Test
  void theSameByKeysAlone() throws IOException {
    tell(visit -> Hands.onKeys(visit.page()));
  }

  private void tell(Function<Visit, Hands> by) throws IOException {
    try (Browser browser = new Browser();
        Served served = Served.at(folder, board.port());
        Visit visit = new Visit(browser, served.at("/rack"), 1024, 800, ColorScheme.LIGHT)) {
      hands = by.apply(visit);
      board.answer();
      assertThat(visit.by(".empty").first()).containsText("No bow yet");
      addBow(visit, "Yew", "50");
      addBow(visit, "Elm", "48");
      for (int i = 0; i < GRAINS.length; i++) {
        addArrow(visit, ARROWS.get(i), GRAINS[i]);
      }

      go(visit, "/");
      choose(visit, "#bow", "Yew");
      choose(visit, "#arrow", "Light");
      shoot(served, "Yew", 45, 340);
      shoot(served, "Elm", 41, 260);
      assertThat(visit.by("#session")).containsText("30 shots, 30 count");
      board.misread(50);
      shot(served);
      assertThat(visit.by("#last-verdict")).hasText("✕ doesn't count");

      go(visit, "/sessions");
      hands.press(visit.by("#sessions h3 a").first());
      assertThat(visit.by("#answer")).containsText("30 shots count");
      retag(visit);
      setAside(visit);

      rework(visit);
      go(visit, "/");
      hands.press(visit.by("#new-session"));
      assertThat(visit.by("#bar")).containsText("A new session");
      shoot(served, "Yew", 45, 240);
      shoot(served, "Elm", 41, 260);

      go(visit, "/rework");
      assertThat(visit.by("select[name=bow]")).hasValue("Yew");
      assertThat(visit.by("#answer .answer")).containsText("Yew is faster by");
      assertTells(visit.by("#answer .answer").textContent(), fpsGained());
      assertThat(visit.by("#answer"))
          .containsText("Elm was left as it was, which tells what the days did");
      assertThat(visit.by("#answer")).containsText("Its virtual mass changed");
      assertThat(visit.by("#chart-changes svg").first()).isVisible();
      visit.wholeScreenshot("story-rework");

      go(visit, "/rack");
      hands.press(visit.by("#content a[href='/bows/Yew']").first());
      hands.press(visit.by("a[href='/bows/Yew/card']"));
      visit.page().waitForURL("**/card");
      prints(visit, "A5");
      prints(visit, "Letter");
      visit.assertUndisturbed();
    }
  }

  private void choose(Visit visit, String button, String name) {
    hands.press(visit.by(button));
    hands.press(visit.by("dialog[open] .choice:has-text('%s')".formatted(name)));
    assertThat(visit.by(button)).containsText(name);
    assertThat(visit.by("dialog[open]")).hasCount(0);
  }

  private void retag(Visit visit) {
    Locator first = visit.by(".shot-list > li").first();
    assertThat(first).containsText("Yew · Light");
    hands.choose(visit.by("#retag [name=arrow]"), "Middle");
    hands.tick(first.locator("[data-shot]"));
    send(visit.by("#retag"));
    assertThat(visit.by("#bar")).containsText("1 retagged.");
    assertThat(first).containsText("Yew · Middle");
    hands.press(visit.by("#bar button")); // it was a slip: undone
    assertThat(first).containsText("Yew · Light");
  }

  private void setAside(Visit visit) {
    Locator second = visit.by(".shot-list > li").nth(1);
    hands.press(second.locator("summary"));
    hands.fill(second.locator("[name=reason]"), "plucked the loose");
    send(second.locator("form"));
    assertThat(visit.by("#bar")).containsText("Set aside.");
    assertThat(second).containsText("plucked the loose");
    assertThat(visit.by("#answer")).containsText("29 shots count");
  }

  private void rework(Visit visit) {
    go(visit, "/rack");
    hands.press(visit.by("#content a[href='/bows/Yew']").first());
    hands.press(visit.by("summary:has-text('enter a rework')"));
    Locator form = visit.by("form[data-send$='/states']").first();
    hands.fill(form.locator("[name=done]"), "tips narrowed");
    hands.fill(form.locator("[name=draw_weight_lb]"), "49,5");
    send(form);
    assertThat(visit.by("#bar")).containsText("The rework is entered.");
    assertThat(visit.by("#life")).containsText("tips narrowed");
    assertThat(visit.by("#life")).containsText("49.5 lb at 27 in");
  }

  /** What the model with the numbers above says, over all arrows. */
  private static double fpsGained() {
    return Arrays.stream(GRAINS)
        .map(grains -> (mps(45, 240, grains) - mps(45, 340, grains)) / 0.3048)
        .average()
        .orElseThrow();
  }

  /** A change with its interval, in which the truth lies. */
  private static void assertTells(String sentence, double truth) {
    Matcher told =
        Pattern.compile("faster by ([\\d.]+) ft/s \\(([\\d.]+) to ([\\d.]+)\\)").matcher(sentence);
    assertThat(told.find()).as(sentence).isTrue();
    assertThat(truth)
        .as(sentence)
        .isBetween(Double.parseDouble(told.group(2)), Double.parseDouble(told.group(3)))
        .isCloseTo(Double.parseDouble(told.group(1)), within(0.2));
  }

  /** One page, read back by pdftotext: its pages end with a form feed each. */
  private void prints(Visit visit, String format) throws IOException {
    Path file = folder.resolve(format + ".pdf");
    visit.page().pdf(new Page.PdfOptions().setFormat(format).setPath(file));
    Process reader =
        new ProcessBuilder("pdftotext", file.toString(), "-")
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String text = new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(text.chars().filter(c -> c == '\f').count()).isEqualTo(1);
    assertThat(text)
        .contains(
            "Yew", "49.5 lb at 27 in", "Never loose it without an arrow", "check your own rules")
        .containsPattern(Pattern.compile("at 1\\d\\d\\.\\d ± \\d"));
    assertThat(Files.size(file)).isPositive();
  }
}
