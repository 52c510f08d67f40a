package castwell.capture.intake;

import castwell.capture.command.Commands;
import castwell.capture.intake.sheet.Complaints;
import castwell.capture.intake.sheet.Line;
import castwell.capture.intake.sheet.Sheet;
import castwell.capture.intake.sheet.SheetRefused;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Feed;
import castwell.capture.store.Transaction;
import java.time.Clock;
import java.util.OptionalLong;
import java.util.function.LongConsumer;

/**
 * Takes in a sheet that a person brings, as a whole or not at all; it is committed before anyone is
 * told of it.
 */
public final class IntakeCommands {
  private final Commands commands;
  private final CaptureSettings settings;
  private final Clock clock;

  public IntakeCommands(Commands commands, CaptureSettings settings, Clock clock) {
    this.commands = commands;
    this.settings = settings;
    this.clock = clock;
  }

  /**
   * Takes a sheet in.
   *
   * @param progress is told how many thousandths are done
   * @throws SheetRefused when anything in it is wrong; then nothing is stored
   */
  public Taken take(Brought brought, LongConsumer progress) {
    Sheet sheet = Sheet.read(brought.source(), brought.kind(), brought.text(), brought.map());
    return commands.together(t -> take(t, brought, sheet, progress));
  }

  /**
   * Tries a sheet out: says what taking it in would do, and keeps nothing.
   *
   * @throws SheetRefused as {@link #take} would
   */
  public Taken tryOut(Brought brought) {
    Sheet sheet = Sheet.read(brought.source(), brought.kind(), brought.text(), brought.map());
    return commands.tryOut(t -> take(t, brought, sheet, part -> {}));
  }

  private Taken take(Transaction t, Brought brought, Sheet sheet, LongConsumer progress) {
    Intake intake = intake(t, brought);
    Complaints complaints = new Complaints();
    int[] done = {0};
    complaints.each(
        sheet.lines(),
        Line::number,
        line -> {
          progress.accept(1000L * done[0]++ / sheet.lines().size());
          line.refuseTooMany();
          intake.take(line);
        });
    complaints.raise(brought.source());
    intake.finish(complaints);
    complaints.raise(brought.source());
    if (intake.tally().taken() > 0) {
      t.feed().add(Feed.Kind.REFRESH, "", OptionalLong.empty());
    }
    return intake.tally().of(brought.kind(), sheet.notRead());
  }

  private Intake intake(Transaction t, Brought brought) {
    return switch (brought.kind()) {
      case SHOTS -> new ShotIntake(t, brought, settings, clock.instant());
      case BOWS -> new BowIntake(t, settings.zone(), clock.instant());
      case ARROWS -> new ArrowIntake(t, commands.arrows());
      case FORCE_DRAW -> new ForceDrawIntake(t, brought.by(), settings.zone(), clock.instant());
    };
  }
}
