package castwell.web.cli;

import castwell.capture.store.Store;
import castwell.web.access.Doorkeeper;
import castwell.web.access.Invitation;
import castwell.web.settings.HttpAddress;
import castwell.web.settings.Settings;
import castwell.web.settings.SettingsFile;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

@Command(
    name = "key",
    description =
        "Tell when the key was made that lets others change things, or make another. While Castwell runs no other can be made: end it first.")
final class KeyCommand implements Callable<Integer> {
  // Whoever wants a key wants to be reached from elsewhere.
  private static final String EVERYWHERE = "0.0.0.0";

  @Spec private CommandSpec spec;
  @ParentCommand private Castwell castwell;
  @Mixin private HttpOption http;

  @Option(
      names = "--new",
      description =
          "Make another key. The one before opens nothing any more, and whom it let in is out.")
  private boolean another;

  @Override
  public Integer call() {
    Path folder = castwell.data().orDefault();
    PrintWriter out = spec.commandLine().getOut();
    if (another) {
      Settings settings = SettingsFile.read(folder);
      HttpAddress wanted = http.or(settings.listen());
      HttpAddress address =
          wanted.isLoopback() ? new HttpAddress(EVERYWHERE, wanted.port()) : wanted;
      try (Store store = Store.open(folder)) {
        String key = new Doorkeeper(store, Clock.systemUTC()).newKey();
        out.println(Invitation.to(settings.http(), address).text(key));
      }
    } else {
      try (Store store = Store.openToRead(folder)) {
        out.println(told(store));
      }
    }
    out.flush();
    return 0;
  }

  /**
   * Says since when there is a key. The key itself can't be shown, because only its hash is kept.
   */
  private static String told(Store store) {
    return store.read(
        t ->
            t.access()
                .key()
                .map(
                    key ->
                        "The key was made at %s; by it %s. It is kept as a hash alone: \"castwell key --new\" makes another."
                            .formatted(key.made(), in(t.access().admissions())))
                .orElse(
                    "There is no key yet: the first start where others can reach the page makes one, and so does \"castwell key --new\"."));
  }

  private static String in(int browsers) {
    return browsers == 1 ? "1 browser is in" : browsers + " browsers are in";
  }
}
