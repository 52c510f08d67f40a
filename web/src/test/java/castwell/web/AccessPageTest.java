package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Getting in, watching only, and hostile names, in a real browser. */
@Tag("browser")
@Timeout(300)
class AccessPageTest {
  private static Browser browser;

  @TempDir Path folder;

  @BeforeAll
  static void openBrowser() {
    browser = new Browser();
  }

  @AfterAll
  static void closeBrowser() {
    browser.close();
  }

  private static Visit visit(Served served, String path) {
    return new Visit(browser, served.at(path), 360, 740, ColorScheme.LIGHT);
  }

  private static List<String> bows(Served served) {
    List<String> names = new ArrayList<>();
    served.store().read(t -> t.rack().bowNames()).forEach(bow -> names.add(bow.name()));
    return names;
  }

  private static long events(Served served) {
    return served.store().read(t -> t.feed().last());
  }

  private static void addBow(Visit visit, String name) {
    assertThat(visit.by("#bow b")).hasText("choose a bow");
    visit.by("#bow").click();
    visit.fill("name", name);
    visit.fill("draw_weight_lb", "50");
    visit.fill("draw_length_in", "27");
    visit.button("add and choose").click();
    assertThat(visit.by("#bow b")).hasText(name);
  }

  @Test
  void theLinkLetsTheBrowserInAndTheKeyIsNowhereToBeSeenAfterwards() {
    try (Served served = Served.forOthers(folder, "");
        Visit visit = visit(served, "/enter#" + served.key())) {
      visit.page().waitForURL(served.at("/").toString());
      addBow(visit, "Rowan");
      assertThat(bows(served)).containsExactly("Rowan");
      assertThat(visit.by("#watching")).isHidden();
      assertThat(visit.page().evaluate("document.cookie")).isEqualTo("");
      assertThat(visit.page().evaluate("JSON.stringify(localStorage) + document.body.innerHTML"))
          .asString()
          .doesNotContain(served.key());
      visit.assertUndisturbed();
      visit.page().goBack();
      assertThat(visit.page().url()).doesNotContain("#");
    }
  }

  @Test
  void whereWatchingIsNotOpenThePageLeadsToTheWayIn() {
    try (Served served = Served.forOthers(folder, "");
        Visit visit = visit(served, "/")) {
      visit.page().waitForURL(served.at("/enter").toString());
      visit.screenshot("enter");
      visit.by("#key").fill("not the key");
      visit.by("#form button").click();
      assertThat(visit.by("#told")).containsText("That isn't the key");
      visit.by("#key").fill(served.key().toLowerCase());
      visit.page().keyboard().press("Enter");
      visit.page().waitForURL(served.at("/").toString());
      assertThat(visit.by("#link-words")).containsText("board");
      visit.assertDisturbedOnlyBy("401");
    }
  }

  @Test
  void whoWatchesSeesThatItIsWatchingAndHowToGetIn() {
    try (Served served = Served.forOthers(folder, "watch = \"open\"");
        Visit visit = visit(served, "/")) {
      assertThat(visit.by("#watching")).isVisible();
      visit.screenshot("watching");
      long events = events(served);
      for (String button : List.of("#bow", "#arrow", "#new-session")) {
        visit.by(button).click();
        assertThat(visit.by("#sheet")).isHidden();
        assertThat(visit.by("#bar")).containsText("You are watching");
      }
      assertThat(events(served)).isEqualTo(events);
      visit.by("#watching a").click();
      visit.by("#key").fill(served.key());
      visit.by("#form button").click();
      visit.page().waitForURL(served.at("/").toString());
      addBow(visit, "Rowan");
      assertThat(visit.by("#watching")).isHidden();
      visit.by("#leave").click();
      assertThat(visit.by("#watching")).isVisible();
      assertThat(visit.by("#leave")).isHidden();
      visit.assertUndisturbed();
    }
  }

  private static final List<String> SCRIPTS =
      List.of(
          "<script>alert(1)</script>",
          "<img src=x onerror=alert(1)>",
          "\"><svg/onload=alert(1)>",
          "'-alert(1)-'",
          "</title></style><iframe srcdoc='<script>alert(1)</script>'>",
          "javascript:alert(1)",
          "{{constructor.constructor('alert(1)')()}}");

  private static void send(Served served, String method, String path, JsonNode body) {
    Asked asked =
        Asked.send(
            HttpRequest.newBuilder(served.at(path))
                .method(method, BodyPublishers.ofString(body.toString()))
                .header("Content-Type", "application/json"));
    assertThat(asked.status()).as("%s", asked.json()).isBetween(200, 299);
  }

  private static ObjectNode object() {
    return JsonMapper.builder().build().createObjectNode();
  }

  @Test
  void aScriptInANameIsShownAsText() {
    Recordings.replayInto(folder);
    try (Served served = Served.withoutBoard(folder, Recordings.STATION);
        Visit visit = visit(served, "/")) {
      List<String> dialogs = new ArrayList<>();
      visit.page().onDialog(dialog -> dialogs.add(dialog.message()));
      visit
          .page()
          .addInitScript(
              "addEventListener('securitypolicyviolation', (e) => console.error(e.blockedURI))");
      visit.page().reload();
      JsonNode range = Asked.get(served.at("/api/range")).json();
      String shot = "/api/shots/" + range.path("last").path("shot_id").asText();
      for (String script : SCRIPTS) {
        ObjectNode bow = object().put("name", script).put("done", script);
        bow.put("draw_weight_lb", 50).put("draw_length_in", 27);
        send(served, "POST", "/api/bows", bow);
        send(served, "POST", "/api/arrows", object().put("name", script).put("mass_gr", 500));
        ObjectNode tags = object().put("bow", script).put("arrow", script);
        send(served, "POST", shot + "/tags", tags);
        send(
            served,
            "POST",
            shot + "/decision",
            object().put("counts", false).put("reason", script));
        send(served, "PUT", "/api/tags", tags.put("station", Recordings.STATION));

        Page page = visit.page();
        assertThat(visit.by("#bow b")).hasText(script);
        assertThat(visit.by("#arrow b")).hasText(script);
        assertThat(visit.by("#last-reason")).containsText(script);
        visit.by("#bow").click();
        assertThat(visit.by("#sheet .choice[aria-pressed=true]")).containsText(script);
        page.keyboard().press("Escape");
        visit.by("#verdict").click();
        assertThat(visit.by("#sheet")).containsText(script);
        page.keyboard().press("Escape");
      }
      assertThat(visit.by("body img, body iframe, body script")).hasCount(0);
      assertThat(dialogs).isEmpty();
      visit.assertUndisturbed();
    }
  }
}
