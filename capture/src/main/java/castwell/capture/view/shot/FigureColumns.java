package castwell.capture.view.shot;

import castwell.analysis.unit.Units;
import castwell.capture.store.Figures.ExportedFigure;
import castwell.capture.view.Column;
import castwell.capture.view.Column.Type;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Each shot's figures under every calibration it ever had, so that old figures can be told. */
public final class FigureColumns {
  public static final List<Column<ExportedFigure>> COLUMNS =
      List.of(
          new Column<>("shot_id", Type.STRING, "", "the shot", f -> Optional.of(f.shotId())),
          new Column<>(
              "calibration",
              Type.INTEGER,
              "",
              "number of the calibration",
              f -> Optional.of(f.figure().calibrationId())),
          new Column<>(
              "entered_at",
              Type.DATE_TIME,
              "",
              "when the calibration was entered, UTC",
              f -> Optional.of(f.entered().toString())),
          new Column<>(
              "in_force",
              Type.BOOLEAN,
              "",
              "whether it is the one in force for the shot",
              f -> Optional.of(f.inForce())),
          new Column<>(
              "spacing_mm",
              Type.NUMBER,
              "millimetre",
              "gate spacing",
              f -> Optional.of(f.spacingM() * 1e3)),
          new Column<>(
              "tick_rate_hz",
              Type.NUMBER,
              "hertz",
              "the board's tick rate that was used",
              f -> Optional.of(f.figure().hz())),
          new Column<>(
              "tick_rate_u_ppm",
              Type.NUMBER,
              "part per million",
              "its relative standard uncertainty",
              f -> Optional.of(f.figure().hzRelativeU() * 1e6)),
          new Column<>(
              "rules_version",
              Type.INTEGER,
              "",
              "version of the rules that judged it",
              f -> Optional.of(f.figure().rulesVersion())),
          new Column<>(
              "verdict",
              Type.STRING,
              "",
              "the rules' word",
              f -> Optional.of(f.figure().verdict())),
          speed("speed_fps", "speed between the gates", f -> f.figure().speedMps()),
          speed("speed_u_own_fps", "its own uncertainty", f -> f.figure().speedUOwnMps()),
          speed("speed_u_common_fps", "its common uncertainty", f -> f.figure().speedUCommonMps()),
          new Column<>(
              "station", Type.STRING, "", "where the gates stand", f -> Optional.of(f.station())));

  private FigureColumns() {}

  private interface Speed {
    OptionalDouble mps(ExportedFigure figure);
  }

  private static Column<ExportedFigure> speed(String name, String description, Speed speed) {
    return new Column<>(
        name,
        Type.NUMBER,
        "foot per second",
        description,
        f -> {
          OptionalDouble mps = speed.mps(f);
          return mps.isPresent()
              ? Optional.of(mps.getAsDouble() / Units.METRES_PER_FOOT)
              : Optional.empty();
        });
  }
}
