package castwell.capture.intake.sheet;

import castwell.analysis.wording.Phrase;

/**
 * A line that can't be taken in.
 *
 * @param line its number in the file; the heading's is 1
 * @param reason a sentence that names column and value
 */
public record BadLine(int line, Phrase reason) {}
