package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page's pure functions, in the browser that runs them. */
@Tag("browser")
@Timeout(300)
class FormatTest {
  @TempDir static Path folder;
  private static Served served;
  private static Browser browser;
  private static Page page;

  @BeforeAll
  static void open() {
    served = Served.withoutBoard(folder, "range");
    browser = new Browser();
    page = Visit.onAPhone(browser, served).page();
  }

  @AfterAll
  static void close() {
    browser.close();
    served.close();
  }

  /** An expression of the module's functions, as JSON. */
  private static String evaluated(String expression) {
    return (String)
        page.evaluate("() => import('/format.js').then(f => JSON.stringify(" + expression + "))");
  }

  // JCGM 100:2008, 7.2.6: at most two significant digits of u, and the value to the same place.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "152.34567, 0.44      | 152.3   | 0.4",
        "152.34567, 0.3036    | 152.3   | 0.3",
        "152.34567, 0.1       | 152.3   | 0.1",
        "152.34567, 0.099     | 152.35  | 0.10",
        "152.34567, 0.0949    | 152.35  | 0.09",
        "152.34567, 0.049     | 152.35  | 0.05",
        "152.34567, 0.0049    | 152.346 | 0.005",
        "152.34567, 0.96      | 152.3   | 1.0",
        "152.34567, 1.24      | 152.3   | 1.2",
        "152.34567, 9.94      | 152.3   | 9.9",
        "152.34567, 9.96      | 152     | 10",
        "152.34567, 15.9      | 152     | 16",
        "0.33301018, 0.000338 | 0.3330  | 0.0003",
        "24.9757635, 0.0507   | 24.98   | 0.05",
      })
  void aFigureHasTheDigitsThatItsUncertaintyAllows(String valueAndU, String value, String u) {
    assertThat(evaluated("f.figure(" + valueAndU + ")"))
        .isEqualTo("{\"value\":\"%s\",\"u\":\"%s\"}".formatted(value, u));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "f.figure(null, 0.3)                      | null",
        "f.figure(undefined, undefined)           | null",
        "f.figure(NaN, 0.3)                       | null",
        "f.figure(152.34, null)                   | {\"value\":\"152\",\"u\":null}",
        "f.figure(152.34, 0, 1)                   | {\"value\":\"152.3\",\"u\":null}",
        "f.uncertainty(0)                         | \"not known\"",
        "f.uncertainty(null)                      | \"not known\"",
        "f.combined(0.3, 0.4)                     | 0.5",
        "f.combined(null, 0.4)                    | null",
        "f.plain(52)                              | \"52\"",
        "f.plain(40.016)                          | \"40\"",
        "f.plain(27.25, 2)                        | \"27.25\"",
        "f.plain(null)                            | \"?\"",
        "f.grainsPerPound(500, 50)                | 10",
        "f.grainsPerPound(null, 50)               | null",
        "f.grainsPerPound(500, null)              | null",
        "f.tagText({bow: null, arrow: 'Rush'})    | \"no bow · Rush\"",
        "f.countText(0)                           | \"0 shots\"",
        "f.countText(1)                           | \"1 shot\"",
        "f.dayAndMinute('2026-04-01')             | \"2026-04-01\"",
        "f.dayAndMinute('2026-04-01T14:03:22')    | \"2026-04-01 14:03\"",
        "f.duration(-3)                           | \"0 s\"",
        "f.duration(119.9)                        | \"119 s\"",
        "f.duration(120)                          | \"2 min\"",
        "f.duration(7200)                         | \"2 h\"",
        "f.duration(172800)                       | \"2 days\"",
        "f.ticks(150, 154, 4)                     | [150,151,152,153,154]",
        "f.ticks(149.7, 150.4, 4)                 | [149.8,150,150.2,150.4]",
        "f.isNewer({fired_at: '2026-05-02T09:14:08Z'}, {fired_at: '2026-05-02T09:14:07.9Z'}) | true",
        "f.isNewer({fired_at: '2026-05-02T09:14:08Z'}, {fired_at: '2026-05-02T09:14:08.1Z'}) | false",
        "f.isNewer({fired_at: '2026-05-02T09:14:08Z'}, null) | true",
        "f.verdictText({counts: false})           | \"✕ doesn't count\"",
      })
  void aFunctionGives(String expression, String json) {
    assertThat(evaluated(expression)).isEqualTo(json);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0, 0, null, null      | none counts; none set aside",
        "0, 2, null, null      | none counts; 2 set aside",
        "1, 0, 152.34, null    | 1 counts, 152.3 ft/s; none set aside",
        "5, 1, 152.34, 0.87    | 5 count, mean 152.3 ft/s, sd 0.9; 1 set aside",
      })
  void aGroupIsToldInWords(String figures, String words) {
    String[] figure = figures.split(", ");
    Map<String, String> group =
        Map.of("n", figure[0], "set_aside", figure[1], "mean_fps", figure[2], "sd_fps", figure[3]);
    String literal = group.toString().replace('=', ':');
    assertThat(evaluated("f.groupText(" + literal + ")")).isEqualTo("\"" + words + "\"");
  }
}
