package castwell.capture.view.data;

import castwell.capture.view.Meaning;

/** A line that can't be taken in. */
public record BadLine(
    @Meaning("its number in the file") long line, @Meaning("why") String reason) {}
