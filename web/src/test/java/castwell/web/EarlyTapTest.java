package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A form that a script sends may be tapped before the script is there. */
@Timeout(240)
class EarlyTapTest {
  private static final String SENT_BY_SCRIPT =
      "form[data-send], form[data-retag], #form, #sheet-form";

  @TempDir Path folder;

  @Test
  void losesNothingThatWasTyped() {
    int tapped = 0;
    try (Served served = Workbench.serve(folder);
        Browser browser = new Browser()) {
      Workbench.fill(served);
      for (String path : Workbench.pages(true).values()) {
        try (Visit visit =
            new Visit(browser, served.at("/version"), Workbench.PHONE, ColorScheme.LIGHT)) {
          visit.page().route("**/*.js", route -> route.abort());
          String address = served.at(path).toString();
          visit.page().navigate(address);
          for (Locator form : visit.by(SENT_BY_SCRIPT).all()) {
            List<Locator> typed = fill(form);
            // A browser's own reminder of an empty field would keep the tap from being one.
            form.evaluate("f => { f.noValidate = true; f.requestSubmit(); }");
            visit.page().waitForLoadState();
            assertThat(visit.page().url()).isEqualTo(address);
            assertThat(typed).as(path).allMatch(field -> field.inputValue().equals("12"));
            tapped++;
          }
        }
      }
    }
    assertThat(tapped).isGreaterThan(15);
  }

  private static List<Locator> fill(Locator form) {
    List<Locator> typed = new ArrayList<>();
    for (Locator field :
        form.locator("input:not([type]), input[type=text], input[inputmode], textarea").all()) {
      field.evaluate("f => { f.value = '12'; }");
      typed.add(field);
    }
    return typed;
  }
}
