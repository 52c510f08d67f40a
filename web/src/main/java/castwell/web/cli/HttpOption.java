package castwell.web.cli;

import castwell.web.settings.HttpAddress;
import picocli.CommandLine.Option;

/** The option for where the page is served, which takes the place of the settings' choice. */
final class HttpOption {
  @Option(
      names = "--http",
      paramLabel = "[HOST:]PORT",
      description =
          "Where to serve the page. Without a HOST this computer alone can open it; with 0.0.0.0 all of its network can, and a key is needed.")
  private String address;

  HttpAddress or(HttpAddress otherwise) {
    try {
      return address == null ? otherwise : HttpAddress.parse(address);
    } catch (IllegalArgumentException e) {
      throw new SaidPlainly("--http: " + e.getMessage() + ".");
    }
  }
}
