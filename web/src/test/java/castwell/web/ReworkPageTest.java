package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the rework page answers to an address, and what it offers. */
@Tag("slow")
class ReworkPageTest {
  @TempDir static Path folder;
  private static Served served;

  @BeforeAll
  static void fill() {
    served = Workbench.serve(folder);
    Workbench.fill(served);
  }

  @AfterAll
  static void end() {
    served.close();
  }

  private static String page(String query) {
    return Asked.send(
            HttpRequest.newBuilder(served.at("/rework" + query)).header("Accept", "text/html"))
        .text();
  }

  private static String chosen(String value) {
    return "value=\"" + value + "\" selected";
  }

  @Test
  void itAsksForTheLastReworksStatesFirst() {
    assertThat(page(""))
        .contains(
            chosen("state:2026-03-01"),
            chosen("state:2026-05-01"),
            "2026-05-01: tips narrowed",
            "<optgroup label=\"sessions\">",
            "value=\"session:2026-06-01\"",
            "Rowan is faster by",
            "Alder and Hazel and Whitethorn were left as they were");
  }

  @Test
  void aBowToWhichNothingWasDoneByItsSessions() {
    assertThat(page("?bow=Hazel"))
        .contains(chosen("session:2026-04-10"), chosen("session:2026-06-01"))
        .contains("knows of nothing done to Hazel");
  }

  @Test
  void datesInTheAddressAreWhatIsAsked() {
    assertThat(page("?bow=Hazel&before=2026-04-10&after=2026-05-10"))
        .contains(chosen("session:2026-04-10"), chosen("session:2026-05-10"))
        .contains("Hazel");
    assertThat(page("?bow=Rowan&before=2026-03-01&after=2026-06-01&control=Alder"))
        .contains(chosen("state:2026-03-01"), chosen("session:2026-06-01"))
        .contains("Alder was left as it was")
        .doesNotContain("Hazel was", "and Hazel");
  }

  @Test
  void whatCantBeFoundIsSaidAndStaysInTheForm() {
    assertThat(page("?bow=Rowan&before=2020-01-01&after=2026-06-01"))
        .contains("Rowan has no shot that counts on 2020-01-01", "<option selected>2020-01-01");
  }
}
