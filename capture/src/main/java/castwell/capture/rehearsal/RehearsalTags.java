package castwell.capture.rehearsal;

/** The names of the bow and the arrow that are tagged now. */
public record RehearsalTags(String bow, String arrow) {}
