package castwell.capture.store;

import castwell.capture.wire.Sentence.Heartbeat;
import java.time.Instant;

/** A heartbeat, and when it was heard. */
public record HeardBeat(Instant at, Heartbeat beat) {}
