package castwell.web.workbench;

import castwell.capture.intake.sheet.SheetKind;
import castwell.web.table.Exported;
import java.util.List;
import java.util.stream.Stream;

/** The page for taking in sheets, exporting tables and making backups. */
public final class DataPage {

  /**
   * @param exports the names of the files
   * @param sheets the kinds of sheet that can be taken in
   */
  public record View(List<String> exports, List<String> sheets, String backup) {}

  private DataPage() {}

  public static Page of(PageRequest request) {
    View view =
        new View(
            Stream.of(Exported.values()).map(what -> what + ".csv").toList(),
            Stream.of(SheetKind.values()).map(SheetKind::word).toList(),
            request
                .t()
                .upkeep()
                .lastBackup()
                .map(at -> request.say("data.last_backup", Days.withMinute(at, request.zone())))
                .orElseGet(() -> request.say("data.no_backup")));
    return new Page(MenuEntry.DATA, "data", request.say("data.title"), view);
  }
}
