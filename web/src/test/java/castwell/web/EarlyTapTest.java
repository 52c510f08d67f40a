package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A form that a script sends may be tapped before the script is there. */
@Tag("browser")
@Timeout(300)
class EarlyTapTest {
  private static final String SENT_BY_SCRIPT =
      "form[data-send], form[data-retag], #form, #sheet-form";

  private static final String FIELDS =
      "input:not([type]), input[type=text], input[inputmode], textarea";

  /** A browser's own reminder of an empty field would keep the tap from being one. */
  private static final String TYPE_AND_TAP =
      """
      (forms, fields) => forms.forEach(form => {
        form.querySelectorAll(fields).forEach(field => { field.value = '12'; });
        form.noValidate = true;
        form.requestSubmit();
      })""";

  private static final String A_MOMENT =
      "() => new Promise(done => setTimeout(() => requestAnimationFrame(done), 100))";

  private static final String STILL_THERE =
      """
      (forms, fields) => forms.every(form =>
        [...form.querySelectorAll(fields)].every(field => field.value === '12'))""";

  @TempDir Path folder;

  @Test
  void losesNothingThatWasTyped() {
    int tapped = 0;
    try (Served served = Workbench.serve(folder);
        Browser browser = new Browser()) {
      Workbench.fill(served);
      try (Visit visit =
          new Visit(browser, served.at("/version"), Workbench.PHONE, ColorScheme.LIGHT)) {
        visit.page().route("**/*.js", route -> route.abort());
        for (String path : Workbench.pages(true).values()) {
          tapped += tapAll(visit, served.at(path).toString());
        }
      }
    }
    assertThat(tapped).isGreaterThan(15);
  }

  /** How many forms there were. */
  private static int tapAll(Visit visit, String address) {
    visit.page().navigate(address);
    Locator forms = visit.by(SENT_BY_SCRIPT);
    forms.evaluateAll(TYPE_AND_TAP, FIELDS);
    visit.page().evaluate(A_MOMENT);
    visit.page().waitForLoadState();
    assertThat(visit.page().url()).isEqualTo(address);
    assertThat((Boolean) forms.evaluateAll(STILL_THERE, FIELDS)).as(address).isTrue();
    return forms.count();
  }
}
