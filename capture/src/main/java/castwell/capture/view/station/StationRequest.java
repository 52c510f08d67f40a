package castwell.capture.view.station;

import castwell.capture.view.Request;

/** About a station. */
public record StationRequest(String station) implements Request {}
