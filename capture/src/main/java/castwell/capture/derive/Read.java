package castwell.capture.derive;

import castwell.analysis.shot.Passage;
import castwell.analysis.verdict.Assessment;

/**
 * A stored passage as its edges were read.
 *
 * @param hz the board's tick rate then
 */
public record Read(Passage passage, double hz, Assessment assessment) {}
