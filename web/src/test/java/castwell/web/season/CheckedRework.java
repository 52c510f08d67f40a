package castwell.web.season;

import castwell.capture.view.report.rework.ReworkReportView;
import castwell.capture.view.report.rework.ReworkView;
import java.util.function.BiConsumer;

/** What was told of a rework, and of a bow that nothing was done to. */
record CheckedRework(TrueSeason truth, BiConsumer<String, Boolean> counted) {
  static final String HOLDS = "holds";
  static final String FALSE = "false changed";
  static final String WRONG = "wrong sign";
  static final String POWER = "seen at 1.5 %";
  static final String SMALLER = "no larger change holds";
  static final String ALONE = "left alone, false changed";

  void check(Told told) {
    rework(told.rework());
    told.leftAlone().ifPresent(this::leftAlone);
  }

  private void changed(String column, boolean is) {
    counted.accept(column, is);
  }

  private void rework(ReworkReportView told) {
    ReworkView rework = told.rework();
    double change = truth.shooting().change();
    String said = rework.conclusion();
    boolean isSaidChanged = said.equals("faster") || said.equals("slower");
    changed(HOLDS, Checked.holds(rework.ci95Percent(), 100 * Math.expm1(change)));
    changed(WRONG, isSaidChanged && change != 0 && said.equals("faster") != change > 0);
    if (change == 0) {
      changed(FALSE, isSaidChanged);
      told.moved()
          .ifPresent(
              moved -> {
                changed("E falsely moved", moved.energyP() < 0.05);
                changed("K falsely moved", moved.virtualMassP() < 0.05);
              });
    } else {
      changed(POWER, isSaidChanged);
    }
    if (said.startsWith("no change larger")) {
      double most = Double.parseDouble(said.replaceAll("[^0-9.]", ""));
      changed(SMALLER, Math.abs(100 * Math.expm1(change)) <= most);
    }
  }

  private void leftAlone(ReworkReportView report) {
    changed("left alone, holds", Checked.holds(report.rework().ci95Percent(), 0));
    String said = report.rework().conclusion();
    changed(ALONE, said.equals("faster") || said.equals("slower"));
  }
}
