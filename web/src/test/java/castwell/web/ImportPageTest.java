package castwell.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A sheet with somebody's own headings: matched, looked at, mended, taken in. */
@Tag("browser")
@Timeout(300)
class ImportPageTest {
  @TempDir Path folder;

  private static void look(Visit visit, String csv) {
    visit.by("[name=csv]").fill(csv);
    visit.by("[name=look]").click();
  }

  private static void match(Visit visit, String heading, String column) {
    visit.by("select[data-heading='%s']".formatted(heading)).selectOption(column);
  }

  private int arrows(Served served) {
    return served.store().read(t -> t.rack().arrows().size());
  }

  @Test
  void columnsAreMatchedAndEveryBadLineIsShownBeforeAnythingIsKept() throws IOException {
    try (Browser browser = new Browser();
        Served served = Served.withoutBoard(folder, "range");
        Visit visit = new Visit(browser, served.at("/data"), 360, 740, ColorScheme.LIGHT)) {
      visit.by("[name=what]").selectOption("arrows");
      look(visit, "shaft,weight,colour\nHazel,460,red\nAsh,heavy,blue\nBirch,-3,white\n");
      assertThat(visit.by("#matching .empty")).containsText("▲");
      assertThat(visit.by("[name=take]")).isDisabled();
      match(visit, "shaft", "arrow");
      match(visit, "weight", "mass_gr");
      assertThat(visit.by("#matching")).containsText("heavy");
      assertThat(visit.by("#matching .words")).hasCount(2);
      assertThat(visit.by("[name=take]")).isDisabled();
      assertThat(arrows(served)).isZero();
      visit.wholeScreenshot("import-bad-lines");

      look(visit, "shaft,weight,colour\nHazel,460,red\nAsh,520,blue\n");
      match(visit, "shaft", "arrow");
      match(visit, "weight", "mass_gr");
      assertThat(visit.by("#matching .answer")).containsText("take in 2");
      assertThat(arrows(served)).isZero();
      visit.by("[name=take]").click();
      assertThat(visit.by("#bar")).containsText("2 taken in");
      assertThat(arrows(served)).isEqualTo(2);
      visit.assertDisturbedOnlyBy("400");
    }
  }

  @Test
  void aFileFromTheDiskIsReadHere() throws IOException {
    Path file = folder.resolve("mine.csv");
    Files.writeString(file, "arrow,mass_gr\nHazel,460\n");
    try (Browser browser = new Browser();
        Served served = Served.withoutBoard(folder.resolve("data"), "range");
        Visit visit = new Visit(browser, served.at("/data"), 1024, 800, ColorScheme.DARK)) {
      visit.by("[name=what]").selectOption("arrows");
      visit.by("[name=file]").setInputFiles(file);
      assertThat(visit.by("[name=csv]")).hasValue("arrow,mass_gr\nHazel,460\n");
      visit.by("[name=look]").click();
      assertThat(visit.by("#matching .answer")).containsText("take in 1");
      visit.assertUndisturbed();
    }
  }
}
