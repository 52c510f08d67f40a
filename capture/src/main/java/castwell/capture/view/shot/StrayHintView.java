package castwell.capture.view.shot;

import castwell.capture.view.Meaning;

/** A shot that doesn't fit what was shot with its bow in the session so far. */
public record StrayHintView(
    @Meaning("the same in words") String sentence,
    @Meaning("how likely it was plucked or measured wrongly, from 0 to 1") double chance,
    @Meaning("whether reports leave it out, or only doubt it") boolean setAside) {}
