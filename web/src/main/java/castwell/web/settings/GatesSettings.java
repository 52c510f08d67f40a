package castwell.web.settings;

import castwell.analysis.setup.ObliquePath;
import castwell.analysis.setup.SetUpErrors;
import castwell.analysis.setup.UnparallelPlanes;
import castwell.analysis.setup.WarmRails;
import castwell.analysis.speed.Calibration;
import castwell.analysis.speed.Oscillator;
import java.util.Locale;

/**
 * How the gates stand by the settings.
 *
 * @param written the spacing with the uncertainty that it has if somebody measured it
 */
record GatesSettings(Calibration written) {
  static final GatesSettings DEFAULT =
      new GatesSettings(
          new Calibration(
              Calibration.UNTOUCHED_M,
              Calibration.UNTOUCHED_U_M,
              0.001,
              2.0,
              Oscillator.RESONATOR,
              false,
              SetUpErrors.USUAL));

  /**
   * @param otherwise what holds where the table says nothing
   */
  static GatesSettings of(SettingsTable table, GatesSettings otherwise) {
    Calibration or = otherwise.written;
    double spacingM = table.number("spacing_mm", or.spacingM() * 1e3, 50, 10_000) / 1e3;
    double spacingUM = table.number("spacing_u_mm", or.spacingUM() * 1e3, 0, 100) / 1e3;
    boolean isAsBefore =
        Math.abs(spacingM - or.spacingM()) < 1e-9 && Math.abs(spacingUM - or.spacingUM()) < 1e-9;
    return new GatesSettings(
        new Calibration(
            spacingM,
            spacingUM,
            table.number("trigger_scatter_mm", or.triggerScatterM() * 1e3, 0, 50) / 1e3,
            table.number("from_bow_m", or.gatesFromBowM(), 0, 100),
            table.value(
                "oscillator",
                or.oscillator().name().toLowerCase(Locale.ROOT),
                Settings::oscillator),
            table.yesOrNo("spacing_measured").orElse(!isAsBefore || or.isMeasured()),
            errors(table, or.errors())));
  }

  private static SetUpErrors errors(SettingsTable table, SetUpErrors or) {
    double outMm = or.planes().outOfParallelM() * 1e3;
    double offMm = or.planes().offMeasuredM() * 1e3;
    return new SetUpErrors(
        new ObliquePath(table.number("path_degrees", or.path().greatestDegrees(), 0, 15)),
        new UnparallelPlanes(
            table.number("out_of_parallel_mm", outMm, 0, 100) / 1e3,
            table.number("off_measured_mm", offMm, 0, 600) / 1e3),
        new WarmRails(
            table.number("rails_ppm_per_k", or.rails().perKelvin() * 1e6, 0, 1000) / 1e6,
            table.number("rails_k", or.rails().spanK(), 0, 100)),
        table.number("latency_unlike_us", or.latencyUnlikeS() * 1e6, 0, 1000) / 1e6,
        table.number("drag_percent_per_m", or.dragPerMetre() * 100, 0, 100) / 100);
  }

  /** The gates; where nobody measured the spacing, with the uncertainty that it then has. */
  Calibration calibration() {
    return written.isMeasured() ? written : written.unmeasured();
  }
}
