package castwell.capture.view.shot;

import castwell.capture.view.Meaning;
import java.util.List;
import java.util.Optional;

/** A shot with everything that is known of it. */
public record ShotHistory(
    ShotRead shot,
    @Meaning("under every calibration, the first first") List<FigureView> figures,
    @Meaning("as the board stamped them") List<EdgeView> edges,
    @Meaning("how the edges were read; none without edges") Optional<StoryView> story,
    @Meaning("the first first") List<TaggingView> tags,
    @Meaning("the first first") List<DecisionView> decisions) {}
