package castwell.capture.view.plan;

import castwell.capture.view.AtLeast;
import castwell.capture.view.Meaning;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** A plan in short: what is to be shot now and next, and the plan's state. */
public record PlanView(
    @Meaning("its number") long plan,
    @Meaning("where the gates stand") String station,
    String name,
    Instant madeAt,
    String madeBy,
    PlanStage state,
    @Meaning("when something last happened to it") Instant since,
    @AtLeast(1) @Meaning("how many shots it asks for") int turns,
    @AtLeast(0) int done,
    @AtLeast(0) int skipped,
    @Meaning("what to pick up; null when nothing is") Optional<TurnView> now,
    @Meaning("what comes after") Optional<TurnView> then,
    @Meaning("the turn that was shot last") Optional<TurnView> lastShot,
    @Meaning("whether a passage that doesn't count went through since the turn began")
        boolean missed,
    @Meaning("how it stands, in words") String sentence,
    @Meaning("turns whose shot was set aside or retagged since") List<AgainView> shootAgain) {}
