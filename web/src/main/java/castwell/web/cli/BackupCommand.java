package castwell.web.cli;

import castwell.capture.store.Backups;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

@Command(
    name = "backup",
    description =
        "Copy the database as it is now and read the copy back. It may be done while shots are captured.")
final class BackupCommand implements Callable<Integer> {
  @ParentCommand private Castwell castwell;

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "Where to. Default: a dated file in the folder backups of the data folder.")
  private Path file;

  @Override
  public Integer call() throws IOException {
    Path folder = castwell.data().orDefault();
    Instant now = Instant.now();
    Path target = file != null ? file : Backups.place(folder, now);
    if (file == null) {
      Files.createDirectories(target.getParent());
    }
    if (Files.exists(target)) {
      throw new SaidPlainly(target + " exists already: name another file, or move it away.");
    }
    Backups.Made made;
    try (ProgressBar progress = new ProgressBar("Copying", 100)) {
      made =
          Backups.make(folder, target, now, (part, whole) -> progress.reached(100 * part / whole));
    }
    System.out.printf(
        "%s: %s; read back, and the same.%n", made.file(), Holdings.words(made.holding()));
    return 0;
  }
}
