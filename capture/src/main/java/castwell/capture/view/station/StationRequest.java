package castwell.capture.view.station;

import castwell.capture.view.Request;

/** A request that names nothing but a station. */
public record StationRequest(String station) implements Request {}
