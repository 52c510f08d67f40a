package castwell.web.cli;

import castwell.capture.store.Restoring;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

@Command(
    name = "restore",
    description =
        "Put a backup in the database's place. What was there is set aside under a dated name.")
final class RestoreCommand implements Callable<Integer> {
  @ParentCommand private Castwell castwell;

  @Parameters(paramLabel = "FILE", description = "A backup.")
  private Path file;

  @Override
  public Integer call() throws IOException {
    Path folder = castwell.data().orDefault();
    Restoring.Restored restored;
    try (ProgressBar progress = new ProgressBar("Copying", 100)) {
      restored =
          Restoring.restore(
              file, folder, Instant.now(), (part, whole) -> progress.reached(100 * part / whole));
    }
    System.out.printf("%s now holds %s.%n", folder, Holdings.words(restored.holding()));
    restored
        .setAside()
        .ifPresent(aside -> System.out.printf("What was there before is %s.%n", aside));
    return 0;
  }
}
