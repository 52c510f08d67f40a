package castwell.capture.view.station;

import castwell.capture.view.Meaning;

/** A station, by its name alone. */
public record StationNamed(@Meaning("where the gates stand") String station) {}
