package castwell.web.http.api;

import castwell.capture.command.Refused;
import castwell.capture.command.Refused.Why;
import castwell.capture.store.Backups;
import castwell.capture.store.Store;
import castwell.capture.view.data.BackupView;
import castwell.capture.view.data.NoFields;
import castwell.web.http.route.Route;
import castwell.web.table.Exported;
import castwell.web.table.TableWriter;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Everything that is kept, to take away: tables, and copies of the database. */
public final class DataApi {
  private final Store store;
  private final Clock clock;
  private final ZoneId zone;

  public DataApi(Store store, Clock clock, ZoneId zone) {
    this.store = store;
    this.clock = clock;
    this.zone = zone;
  }

  public List<Route> routes() {
    return List.of(
        Route.get("/api/export/{file}", "A table of everything, as CSV")
            .says(this::export, "text/csv"),
        Route.post("/api/backups", "Makes a copy of the database")
            .takes(NoFields.class)
            .creates(BackupView.class, (ctx, nothing) -> backUp()));
  }

  /** The same CSV as the command line's; it goes out as it is read. */
  private void export(Context ctx) {
    Exported what = exported(ctx.pathParam("file"));
    ctx.contentType("text/csv;charset=utf-8");
    ctx.header("Content-Disposition", "attachment; filename=\"" + what + ".csv\"");
    try (Writer writer = new OutputStreamWriter(ctx.outputStream(), StandardCharsets.UTF_8)) {
      store.read(
          t -> {
            TableWriter.write(
                what.table(Optional.empty(), zone), t, TableWriter.Format.csv, writer);
            return null;
          });
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Exported exported(String file) {
    return Arrays.stream(Exported.values())
        .filter(what -> file.equals(what + ".csv"))
        .findFirst()
        .orElseThrow(
            () ->
                Refused.of(
                    Why.NOT_FOUND,
                    "refused.no_export",
                    Arrays.stream(Exported.values())
                        .map(what -> what + ".csv")
                        .collect(Collectors.joining(", "))));
  }

  private BackupView backUp() {
    Instant now = clock.instant();
    Path target = Backups.place(store.folder(), now);
    try {
      Files.createDirectories(target.getParent());
      Backups.Made made = Backups.make(store.folder(), target, now, (part, whole) -> {});
      return new BackupView(made.file().toString(), made.bytes());
    } catch (IOException e) {
      throw Refused.of(Why.CONFLICT, "refused.no_backup", target.getParent());
    }
  }
}
