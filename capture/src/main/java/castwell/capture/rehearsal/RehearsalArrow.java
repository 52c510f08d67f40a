package castwell.capture.rehearsal;

/** An invented arrow. */
public record RehearsalArrow(String name, double massKg, double lengthM, double diameterM) {}
