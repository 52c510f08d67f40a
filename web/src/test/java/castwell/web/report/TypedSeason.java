package castwell.web.report;

import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.capture.announce.Announcer;
import castwell.capture.assembly.AssemblyTiming;
import castwell.capture.cell.CellLedger;
import castwell.capture.command.Commands;
import castwell.capture.intake.Brought;
import castwell.capture.intake.HandUncertainty;
import castwell.capture.intake.IntakeCommands;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.season.SeasonLedger;
import castwell.capture.settings.AirSettings;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Store;
import castwell.capture.store.Transaction;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.IntStream;

/** A store that is filled by sheets, of speeds whose display makes no error of its own. */
public final class TypedSeason implements AutoCloseable {
  public static final ZoneId ZONE = ZoneOffset.UTC;

  private final Store store;
  private final IntakeCommands intake;
  private final StringBuilder shots = new StringBuilder("bow,arrow,speed_fps,fired_at,session\n");

  public TypedSeason(Path folder) {
    CaptureSettings settings =
        new CaptureSettings(
            AssemblyTiming.defaults(),
            Limits.defaults(),
            new Calibration(0.6096, 0.0003, 0.001, 2.0, Oscillator.CRYSTAL),
            new AirSettings(0, 15, 0.5),
            3e-5,
            ZONE);
    store = Store.open(folder);
    Commands commands = new Commands(store, settings, new Announcer(), Clock.systemUTC());
    intake = new IntakeCommands(commands, settings, Clock.systemUTC());
  }

  public void take(SheetKind what, String csv) {
    HandUncertainty none = new HandUncertainty(0, 0);
    intake.take(new Brought(what, what + ".csv", csv, Map.of(), none, "test"), part -> {});
  }

  /** One shot, at noon of the session's day. */
  public void shot(String bow, String arrow, String session, double fps) {
    shotAt(bow, arrow, session, session + "T12:00:00", fps);
  }

  public void shotAt(String bow, String arrow, String session, String at, double fps) {
    shots.append(String.format(Locale.ROOT, "%s,%s,%.12f,%s,%s%n", bow, arrow, fps, at, session));
  }

  /** Takes all of them in, and makes what a daemon makes of them once the range is quiet. */
  public void takeShots() {
    take(SheetKind.SHOTS, shots.toString());
    CellLedger.make(store, ZONE, () -> false);
    SeasonLedger.make(store, ZONE);
  }

  /** Values of exactly this mean and standard deviation. */
  public static double[] speeds(double mean, double sd, int n) {
    double[] raw = IntStream.range(0, n).mapToDouble(i -> i * i).toArray();
    double rawMean = Arrays.stream(raw).average().orElseThrow();
    double squares = Arrays.stream(raw).map(x -> (x - rawMean) * (x - rawMean)).sum();
    double rawSd = Math.sqrt(squares / (n - 1));
    return Arrays.stream(raw).map(x -> mean + (x - rawMean) / rawSd * sd).toArray();
  }

  public <T> T read(Function<Transaction, T> question) {
    return store.read(question::apply);
  }

  @Override
  public void close() {
    store.close();
  }
}
