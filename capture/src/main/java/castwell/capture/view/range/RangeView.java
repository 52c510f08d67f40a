package castwell.capture.view.range;

import castwell.capture.view.Meaning;
import castwell.capture.view.plan.PlanView;
import castwell.capture.view.rack.ArrowView;
import castwell.capture.view.rack.BowView;
import castwell.capture.view.shot.ShotRead;
import castwell.capture.view.station.LinkView;
import castwell.capture.view.station.StoreView;
import castwell.capture.view.station.TagsView;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Everything that the range page shows, at one moment. */
public record RangeView(
    @Meaning("the program's") String version,
    @Meaning("whether the range is pretended") boolean rehearsal,
    @Meaning("this moment, UTC") Instant now,
    @Meaning("number of the last item of the live feed that is in it") long event,
    @Meaning("whose range it is") String station,
    @Meaning("every station's link") List<LinkView> stations,
    TagsView tags,
    @Meaning("null before the first") Optional<CurrentSession> session,
    @Meaning("the last one; null before the first shot") Optional<EndView> end,
    @Meaning("the last shot") Optional<ShotRead> last,
    @Meaning("null where none was begun") Optional<PlanView> plan,
    List<BowView> bows,
    List<ArrowView> arrows,
    @Meaning("every station's place on the disk") List<StoreView> stores,
    @Meaning("what is odd about the computer's clock") Optional<String> clock) {}
