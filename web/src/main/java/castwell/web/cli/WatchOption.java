package castwell.web.cli;

import castwell.web.settings.Settings;
import picocli.CommandLine.Option;

/** The option for who may watch, which takes the place of the settings' choice. */
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
