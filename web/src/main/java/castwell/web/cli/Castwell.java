package castwell.web.cli;

import castwell.analysis.wording.Telling;
import castwell.capture.recording.BadRecording;
import castwell.web.http.guard.CannotServe;
import castwell.web.settings.BadSettings;
import castwell.web.settings.Version;
import castwell.web.text.Speech;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.slf4j.LoggerFactory;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.ScopeType;

/** The command line. Bad input gets one sentence and exit code 2. */
@Command(
    name = "castwell",
    description = "Reads a light-screen chronograph's gates and says how a bow shoots.",
    mixinStandardHelpOptions = true,
    scope = ScopeType.INHERIT,
    versionProvider = Castwell.Versions.class,
    subcommands = {
      RunCommand.class,
      RehearseCommand.class,
      ReplayCommand.class,
      RecordCommand.class,
      ForwardCommand.class,
      ImportCommand.class,
      ExportCommand.class,
      ReportCommand.class,
      CheckCommand.class,
      KeyCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      VerifyCommand.class,
      WarmUpCommand.class
    })
public final class Castwell {
  private static final int BAD_INPUT = 2;
  private static final int OWN_FAULT = 70; // The code is EX_SOFTWARE of sysexits.h.

  private static final List<Class<? extends Exception>> PLAIN =
      List.of(BadRecording.class, BadSettings.class, CannotServe.class, SaidPlainly.class);

  static final class Versions implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"castwell " + Version.TEXT};
    }
  }

  @Mixin private DataFolder data;

  private Castwell() {}

  DataFolder data() {
    return data;
  }

  public static int run(String... args) {
    CommandLine line = new CommandLine(new Castwell());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setParameterExceptionHandler(Castwell::misused);
    line.setExecutionExceptionHandler(Castwell::failed);
    return line.execute(args);
  }

  private static int misused(ParameterException e, String[] args) {
    String command = e.getCommandLine().getCommandSpec().qualifiedName();
    String what = e.getMessage().strip().replaceFirst("\\.$", "");
    say(e.getCommandLine(), what + ". See \"" + command + " --help\".");
    return BAD_INPUT;
  }

  private static int failed(Exception e, CommandLine line, ParseResult parsed) throws Exception {
    if (e instanceof ParameterException misuse) {
      return misused(misuse, new String[0]);
    }
    if (e instanceof Telling telling) {
      say(line, Speech.TRADE.say(telling.phrase()));
      return BAD_INPUT;
    }
    if (PLAIN.contains(e.getClass())) {
      say(line, e.getMessage());
      return BAD_INPUT;
    }
    if (e instanceof IOException || e instanceof UncheckedIOException) {
      say(
          line,
          "A file could not be read or written (%s): check its path, and your right to it."
              .formatted(e.getMessage()));
      return BAD_INPUT;
    }
    LoggerFactory.getLogger(Castwell.class).error("a fault of Castwell's own", e);
    return OWN_FAULT;
  }

  private static void say(CommandLine line, String sentence) {
    line.getErr().println("castwell: " + sentence);
    line.getErr().flush();
  }
}
