package castwell.capture.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import castwell.analysis.reading.Limits;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import castwell.capture.English;
import castwell.capture.announce.Announcer;
import castwell.capture.assembly.AssemblyTiming;
import castwell.capture.command.Commands;
import castwell.capture.intake.sheet.SheetKind;
import castwell.capture.intake.sheet.SheetRefused;
import castwell.capture.settings.AirSettings;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Shot;
import castwell.capture.store.Store;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A data folder with commands that take sheets in. */
final class IntakeBench implements AutoCloseable {
  static final Instant NOW = Instant.parse("2026-06-01T12:00:00Z");
  static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  private final Store store;
  private final IntakeCommands commands;
  private final Commands range;
  private final CaptureSettings settings;

  IntakeBench(Path folder) {
    settings =
        new CaptureSettings(
            AssemblyTiming.defaults(),
            Limits.defaults(),
            new Calibration(0.6096, 0.0003, 0.001, 2.0, Oscillator.CRYSTAL),
            new AirSettings(0, 15, 0.5),
            3e-5,
            ZONE);
    Clock clock = Clock.fixed(NOW, ZONE);
    store = Store.open(folder);
    range = new Commands(store, settings, new Announcer(), clock);
    commands = new IntakeCommands(range, settings, clock);
  }

  Store store() {
    return store;
  }

  CaptureSettings settings() {
    return settings;
  }

  Commands range() {
    return range;
  }

  /** Two bows, one of them reworked, and two arrows. */
  IntakeBench withRack() {
    take(
        SheetKind.BOWS,
        "bow,state_on,draw_weight_lb,draw_length_in,brace_height_in\nAsh,2026-04-01,50,28,6\nAsh,2026-05-01,48,28,6\nYew,2026-04-01,60,28,");
    take(SheetKind.ARROWS, "arrow,mass_gr,diameter_in\nA1,500,0.34\nA2,600,");
    return this;
  }

  Taken take(SheetKind what, String csv) {
    return take(what, "paper.csv", csv);
  }

  Taken take(SheetKind what, String source, String csv) {
    return commands.take(
        new Brought(what, source, csv, Map.of(), HandUncertainty.USUAL, "import"), part -> {});
  }

  /** SheetKind is said of each bad line; nothing may be stored. */
  List<String> refused(SheetKind what, String csv) {
    long before = store.read(t -> t.feed().last());
    List<String> said = new ArrayList<>();
    assertThatExceptionOfType(SheetRefused.class)
        .isThrownBy(() -> take(what, csv))
        .satisfies(
            e -> e.lines().forEach(bad -> said.add(bad.line() + ": " + English.say(bad.reason()))))
        .withMessageContaining("paper.csv");
    assertThat(store.<Long>read(t -> t.feed().last())).isEqualTo(before);
    return said;
  }

  /** The first fired first. */
  List<Shot> shots() {
    List<Shot> shots = new ArrayList<>();
    store.read(
        t -> {
          t.shots().each(shots::add);
          return null;
        });
    return shots;
  }

  @Override
  public void close() {
    store.close();
  }
}
