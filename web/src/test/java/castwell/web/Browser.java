package castwell.web;

import castwell.capture.Until;
import com.microsoft.playwright.BrowserType.LaunchOptions;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The system's own Chromium, driven by the system's own Node. Where either is missing it can't be
 * opened, so that the tests fail.
 */
final class Browser implements AutoCloseable {
  private static final List<String> ARGUMENTS =
      List.of(
          "--no-sandbox",
          "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1 , EXCLUDE localhost", // no
          // internet
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  /** Other tests' browsers work on the same computer. */
  private final Playwright playwright;

  private final com.microsoft.playwright.Browser chromium;

  Browser() {
    PlaywrightAssertions.setDefaultAssertionTimeout(Until.PATIENCE.toMillis());
    playwright =
        Playwright.create(
            new Playwright.CreateOptions()
                .setEnv(
                    Map.of(
                        "PLAYWRIGHT_NODEJS_PATH",
                        onPath("node").toString(),
                        "PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD",
                        "1")));
    chromium =
        playwright
            .chromium()
            .launch(
                new LaunchOptions()
                    .setExecutablePath(onPath("chromium"))
                    .setHeadless(true)
                    .setArgs(ARGUMENTS));
  }

  private static Path onPath(String program) {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator))
        .map(folder -> Path.of(folder, program))
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("there is no " + program + " on the PATH"));
  }

  com.microsoft.playwright.Browser chromium() {
    return chromium;
  }

  @Override
  public void close() {
    playwright.close();
  }
}
