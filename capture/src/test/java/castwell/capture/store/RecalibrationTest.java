package castwell.capture.store;

import static castwell.capture.store.Rows.NOON;
import static castwell.capture.store.Rows.STATION;
import static org.assertj.core.api.Assertions.assertThat;

import castwell.capture.store.Calibrations.Entry;
import castwell.capture.store.Figures.ExportedFigure;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The gates as measured hold from an instant on, and can be corrected; old figures remain. */
class RecalibrationTest {
  private static final Instant LATER = NOON.plusSeconds(3600);

  @TempDir Path folder;
  private Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private long enter(Instant validFrom, double spacingM, String by) {
    return store.write(
        t -> t.calibrations().enter(STATION, validFrom, Rows.calibration(spacingM), LATER, by));
  }

  private Optional<Double> spacingAt(Instant at) {
    return store
        .read(t -> t.calibrations().inForce(STATION, at))
        .map(entry -> entry.calibration().spacingM());
  }

  @Test
  void noneIsInForceWhereNoneWasEntered() {
    assertThat(spacingAt(NOON)).isEmpty();
    enter(NOON, 0.6096, "settings");
    assertThat(Rows.maybe(store, t -> t.calibrations().inForce("garden", NOON))).isEmpty();
  }

  @Test
  void theFirstHoldsBeforeItsInstantToo() {
    enter(NOON, 0.6096, "settings");
    enter(LATER, 0.6100, "page");
    assertThat(spacingAt(NOON.minusSeconds(86400))).contains(0.6096);
  }

  @Test
  void aLaterOneHoldsFromItsInstantOn() {
    enter(NOON, 0.6096, "settings");
    enter(LATER, 0.6100, "page");
    assertThat(spacingAt(NOON)).contains(0.6096);
    assertThat(spacingAt(LATER.minusMillis(1))).contains(0.6096);
    assertThat(spacingAt(LATER)).contains(0.6100);
  }

  @Test
  void oneOfTheSameInstantCorrectsIt() {
    enter(NOON, 0.6096, "settings");
    enter(LATER, 0.6100, "page");
    enter(NOON, 0.6080, "page");
    assertThat(spacingAt(NOON.minusSeconds(1))).contains(0.6080);
    assertThat(spacingAt(NOON)).contains(0.6080);
    assertThat(spacingAt(LATER)).contains(0.6100);
    assertThat(Rows.list(store, t -> t.calibrations().of(STATION)))
        .extracting(entry -> entry.calibration().spacingM())
        .containsExactly(0.6096, 0.6100, 0.6080);
  }

  @Test
  void everyFieldComesBack() {
    long id = enter(NOON, 0.6096, "settings");
    Entry entry = new Entry(id, STATION, NOON, Rows.calibration(0.6096), LATER, "settings");
    assertThat(Rows.maybe(store, t -> t.calibrations().inForce(STATION, NOON))).contains(entry);
    enter(LATER, 0.61, "page");
    assertThat(Rows.maybe(store, t -> t.calibrations().lastBy(STATION, "settings")))
        .contains(entry);
  }

  @Test
  void figuresOfEarlierCalibrationsRemain() {
    Passages.Row shot = store.write(t -> Rows.shoot(t, 1, NOON, true));
    long corrected = enter(NOON, 0.6080, "page");
    Figure old = Rows.figure(shot.id(), shot.calibrationId(), 50, true);
    Figure anew = Rows.figure(shot.id(), corrected, 49.87, true);
    store.writing(
        t -> {
          t.passages().calibrate(shot.id(), corrected);
          t.figures().put(anew);
        });
    assertThat(Rows.list(store, t -> t.figures().history(shot.id()))).containsExactly(old, anew);
    assertThat(Rows.maybe(store, t -> t.shots().byPassage(shot.id())).orElseThrow().figure())
        .isEqualTo(anew);
    List<ExportedFigure> exported = store.read(t -> t.figures().exported(shot.id()));
    assertThat(exported).extracting(ExportedFigure::inForce).containsExactly(false, true);
    assertThat(exported).extracting(ExportedFigure::spacingM).containsExactly(0.6096, 0.6080);
  }

  @Test
  void aFigureDerivedAgainUnderTheSameCalibrationTakesThePlaceOfTheOld() {
    Passages.Row shot = store.write(t -> Rows.shoot(t, 1, NOON, true));
    Figure better = Rows.figure(shot.id(), shot.calibrationId(), 50.01, true);
    store.writing(t -> t.figures().put(better));
    assertThat(Rows.list(store, t -> t.figures().history(shot.id()))).containsExactly(better);
  }
}
