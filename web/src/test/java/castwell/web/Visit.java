package castwell.web;

import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.Until;
import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** One person's look at the page; what went wrong meanwhile is kept. */
final class Visit implements AutoCloseable {
  private static final Path SCREENSHOTS = Path.of("target", "screenshots");

  private final BrowserContext context;
  private final Page page;
  private final List<String> complaints = new ArrayList<>();
  private final List<String> elsewhere = new ArrayList<>();

  Visit(Browser browser, URI address, int width, int height, ColorScheme colours) {
    context =
        browser
            .chromium()
            .newContext(
                new NewContextOptions().setViewportSize(width, height).setColorScheme(colours));
    context.setDefaultTimeout(Until.PATIENCE.toMillis());
    context.onConsoleMessage(
        message -> {
          if (message.type().equals("error") || message.type().equals("warning")) {
            complaints.add(message.text());
          }
        });
    context.onWebError(error -> complaints.add(error.error()));
    context.onRequest(
        request -> {
          if (!URI.create(request.url()).getHost().equals("127.0.0.1")) {
            elsewhere.add(request.url());
          }
        });
    page = context.newPage();
    page.navigate(address.toString());
  }

  Visit(Browser browser, URI address, Workbench.Screen screen, ColorScheme colours) {
    this(browser, address, screen.width(), screen.height(), colours);
  }

  static Visit onAPhone(Browser browser, Served served) {
    return new Visit(browser, served.at("/"), 360, 740, ColorScheme.LIGHT);
  }

  Page page() {
    return page;
  }

  Locator by(String selector) {
    return page.locator(selector);
  }

  /** The button with these words, in the open sheet if there is one. */
  Locator button(String words) {
    return page.locator("dialog[open] button, dialog[open] summary, .bar button")
        .filter(new Locator.FilterOptions().setHasText(words))
        .first();
  }

  /** Fills the open form's fields in, by their names. */
  void fill(String field, String value) {
    page.locator("dialog[open] details[open] input[name=" + field + "]").fill(value);
  }

  void screenshot(String name) {
    page.screenshot(new Page.ScreenshotOptions().setPath(SCREENSHOTS.resolve(name + ".png")));
  }

  void wholeScreenshot(String name) {
    page.screenshot(
        new Page.ScreenshotOptions().setPath(SCREENSHOTS.resolve(name + ".png")).setFullPage(true));
  }

  /** Nothing in the console, no uncaught error, and nothing asked of any other computer. */
  void assertUndisturbed() {
    assertDisturbedOnlyBy("nothing at all");
  }

  void assertDisturbedOnlyBy(String expected) {
    assertThat(complaints).allSatisfy(complaint -> assertThat(complaint).contains(expected));
    assertThat(elsewhere).isEmpty();
  }

  @Override
  public void close() {
    context.close();
  }
}
