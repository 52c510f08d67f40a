package castwell.capture.view.report.session;

import castwell.capture.view.Meaning;
import castwell.capture.view.report.cell.CellView;
import castwell.capture.view.report.cell.StrayView;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One outing: what was shot, what was set aside, and whether something drifted. */
public record SessionReportView(
    String session,
    String station,
    List<String> sentences,
    List<CellView> cells,
    @Meaning("its bows against each other, with the arrows that both shot")
        List<SideBySideView> sideBySide,
    List<AsideView> setAside,
    List<StrayView> strays,
    OptionalDouble pooledSdFps,
    int degreesOfFreedom,
    Optional<DriftView> drift,
    List<FirstShotsView> firstShots) {}
