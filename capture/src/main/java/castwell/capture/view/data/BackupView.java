package castwell.capture.view.data;

import castwell.capture.view.Meaning;

/** A backup that was made. */
public record BackupView(@Meaning("where it is") String file, long bytes) {}
