package castwell.web.http;

import castwell.capture.daemon.Announcer;
import castwell.capture.daemon.Capture;
import castwell.capture.daemon.CaptureSettings;
import castwell.capture.daemon.Desk;
import castwell.capture.daemon.OnwardClock;
import castwell.capture.store.Store;
import java.util.function.LongSupplier;

/**
 * What the page and its API are served from.
 *
 * @param nanos a monotonic clock
 * @param rehearsal whether the range is pretended
 */
public record Parts(
    Store store,
    Desk desk,
    Capture capture,
    Announcer announcer,
    CaptureSettings settings,
    OnwardClock clock,
    LongSupplier nanos,
    boolean rehearsal) {}
