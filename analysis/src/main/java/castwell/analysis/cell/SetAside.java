package castwell.analysis.cell;

import castwell.analysis.wording.Phrase;
import java.util.List;

/** A shot that doesn't count, and why. */
public record SetAside(String shotId, List<Phrase> reasons) {}
