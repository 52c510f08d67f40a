package castwell.web.cli;

import castwell.web.settings.Settings;
import picocli.CommandLine.Option;

/** Who may watch, instead of what the settings say. */
final class WatchOption {
  @Option(
      names = "--watch-open",
      description =
          "Where others can reach the page, let all of them watch without the key. Changing things needs it in any case.")
  private boolean watchOpen;

  Settings over(Settings settings) {
    return watchOpen ? settings.with(settings.http().withWatchOpen()) : settings;
  }
}
