package castwell.web.cli;

import castwell.capture.cell.CellLedger;
import castwell.capture.derive.Verification;
import castwell.capture.season.SeasonLedger;
import castwell.capture.store.Store;
import castwell.web.settings.SettingsFile;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParentCommand;

@Command(
    name = "verify",
    description =
        "Check the database: whether it is whole, and whether every figure still follows from the raw edges. It changes nothing.")
final class VerifyCommand implements Callable<Integer> {
  @ParentCommand private Castwell castwell;

  @Override
  public Integer call() {
    Path folder = castwell.data().orDefault();
    try (Store store = Store.openToRead(folder)) {
      Verification.Outcome outcome;
      try (ProgressBar progress = new ProgressBar("Deriving anew", 100)) {
        outcome =
            new Verification(SettingsFile.read(folder).capture())
                .verify(store, (done, all) -> progress.reached(100 * done / all));
      }
      List<String> wrong =
          outcome.faultCount() == 0 ? CellLedger.wrong(store, ZoneId.systemDefault()) : List.of();
      boolean isSeasonWrong =
          outcome.faultCount() == 0 && SeasonLedger.isWrong(store, ZoneId.systemDefault());
      outcome.faults().forEach(System.out::println);
      wrong.forEach(
          session ->
              System.out.printf("The sums kept of session %s aren't its shots'.%n", session));
      if (isSeasonWrong) {
        System.out.println("What is kept of how days differ isn't what the sessions tell.");
      }
      System.out.println(words(outcome));
      return outcome.faultCount() == 0 && wrong.isEmpty() && !isSeasonWrong ? 0 : 1;
    }
  }

  private static String words(Verification.Outcome outcome) {
    String what =
        "%d figures of %d passages were derived anew"
            .formatted(outcome.figures(), outcome.passages());
    String older =
        outcome.byOlderRules() == 0
            ? ""
            : "; %d were judged by an earlier program's rules".formatted(outcome.byOlderRules());
    return outcome.faultCount() == 0
        ? "All is well: %s and are the same%s.".formatted(what, older)
        : "%d faults: %s%s. Keep a copy of the folder, and put back a backup."
            .formatted(outcome.faultCount(), what, older);
  }
}
