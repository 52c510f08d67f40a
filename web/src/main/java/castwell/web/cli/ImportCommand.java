package castwell.web.cli;

import castwell.analysis.unit.Units;
import castwell.capture.announce.Announcer;
import castwell.capture.command.Commands;
import castwell.capture.intake.Brought;
import castwell.capture.intake.HandUncertainty;
import castwell.capture.intake.IntakeCommands;
import castwell.capture.intake.Taken;
import castwell.capture.intake.sheet.BadLine;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.intake.sheet.SheetRefused;
import castwell.capture.store.Store;
import castwell.web.settings.Settings;
import castwell.web.settings.SettingsFile;
import castwell.web.text.Speech;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

@Command(
    name = "import",
    description =
        "Take in what somebody wrote down, from a CSV file with a heading line: all of it, or nothing. Its headings name the units, such as speed_fps or speed_mps.")
final class ImportCommand implements Callable<Integer> {
  private static final int MOST_LINES = 50;
  private static final int THOUSANDTHS = 1000;

  /** Lets the option take one of the kinds' names. */
  static final class OneOfSheetKind extends OneOf<SheetKind> {
    OneOfSheetKind() {
      super(SheetKind.class);
    }
  }

  @Spec private CommandSpec spec;
  @ParentCommand private Castwell castwell;

  @Parameters(paramLabel = "FILE", description = "A CSV file in UTF-8.")
  private Path file;

  @Option(
      names = "--what",
      paramLabel = "<what>",
      converter = OneOfSheetKind.class,
      required = true,
      description =
          "shots (bow, arrow, speed_fps), bows (bow, state_on, draw_weight_lb, draw_length_in), arrows (arrow, mass_gr) or force-draw (bow, state_on, draw_length_in, draw_force_lb).")
  private SheetKind kind;

  @Option(
      names = "--map",
      paramLabel = "THEIRS=OURS",
      description = "Read a heading of the file as one of ours.")
  private Map<String, String> map = new LinkedHashMap<>();

  @Option(
      names = "--own-fps",
      paramLabel = "FPS",
      description =
          "Standard uncertainty of each speed read off a display. Default: 0.29, for one in whole ft/s.")
  private Optional<Double> ownFps = Optional.empty();

  @Option(
      names = "--common-percent",
      paramLabel = "PERCENT",
      description =
          "Standard uncertainty that all the speeds of a set-up share. Default: ${DEFAULT-VALUE}.")
  private double commonPercent = 0.5;

  @Override
  public Integer call() throws IOException {
    HandUncertainty uncertainty = uncertainty();
    Brought brought = new Brought(kind, name(), text(), map, uncertainty, "import");
    Path folder = castwell.data().orDefault();
    try (Store store = Store.open(folder);
        ProgressBar progress = new ProgressBar(name(), THOUSANDTHS)) {
      Settings settings = SettingsFile.read(folder);
      Commands commands =
          new Commands(store, settings.capture(), new Announcer(), Clock.systemUTC());
      IntakeCommands intake = new IntakeCommands(commands, settings.capture(), Clock.systemUTC());
      say(intake.take(brought, progress::reached));
      return 0;
    } catch (SheetRefused e) {
      name(e);
      throw e;
    }
  }

  private String name() {
    return file.getFileName().toString();
  }

  private String text() throws IOException {
    try {
      return Files.readString(file);
    } catch (CharacterCodingException e) {
      throw new SaidPlainly(
          "%s isn't text in UTF-8: save it anew as \"CSV UTF-8\".".formatted(file));
    }
  }

  private HandUncertainty uncertainty() {
    try {
      return new HandUncertainty(
          ownFps.map(fps -> fps * Units.METRES_PER_FOOT).orElse(HandUncertainty.USUAL.ownMps()),
          commonPercent / 100);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(
          spec.commandLine(), "--own-fps and --common-percent: " + e.getMessage());
    }
  }

  private void say(Taken taken) {
    if (!taken.notRead().isEmpty()) {
      PrintWriter err = spec.commandLine().getErr();
      err.printf("castwell: Not read in %s: %s.%n", name(), String.join(", ", taken.notRead()));
      err.flush();
    }
    System.out.println(Speech.TRADE.say(taken.phrase()));
  }

  private void name(SheetRefused refused) {
    PrintWriter err = spec.commandLine().getErr();
    refused.lines().stream()
        .limit(MOST_LINES)
        .forEach(
            (BadLine bad) ->
                err.printf("line %d: %s%n", bad.line(), Speech.TRADE.say(bad.reason())));
    if (refused.lines().size() > MOST_LINES) {
      err.printf("and %d more%n", refused.lines().size() - MOST_LINES);
    }
    err.flush();
  }
}
