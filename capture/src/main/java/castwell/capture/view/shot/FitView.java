package castwell.capture.view.shot;

import castwell.capture.view.Meaning;

/** A bow with an arrow that a shot fits. */
public record FitView(
    String bow, String arrow, @Meaning("against the tags") double timesAsLikely) {}
