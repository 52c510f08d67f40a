package castwell.web.cli;

import java.nio.file.Path;
import java.util.Map;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** The folder in which everything is kept. */
final class DataFolder {
  @Option(
      names = "--data",
      scope = ScopeType.INHERIT,
      paramLabel = "DIR",
      description =
          "The data folder: database and settings. Default: castwell (castwell-rehearsal for a rehearsal) in $XDG_DATA_HOME, or in .local/share of your home folder.")
  private Path folder;

  Path orDefault(String name) {
    return folder != null ? folder : home(System.getenv()).resolve(name);
  }

  Path orDefault() {
    return orDefault("castwell");
  }

  /** The default place by the XDG Base Directory Specification. */
  static Path home(Map<String, String> environment) {
    String data = environment.getOrDefault("XDG_DATA_HOME", "");
    return data.isEmpty()
        ? Path.of(System.getProperty("user.home"), ".local", "share")
        : Path.of(data);
  }
}
