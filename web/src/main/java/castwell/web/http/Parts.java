package castwell.web.http;

import castwell.capture.announce.Announcer;
import castwell.capture.clock.OnwardClock;
import castwell.capture.command.Commands;
import castwell.capture.daemon.Capture;
import castwell.capture.health.Checkup;
import castwell.capture.publish.broker.BrokerState;
import castwell.capture.settings.CaptureSettings;
import castwell.capture.store.Store;
import castwell.web.access.Doorkeeper;
import castwell.web.settings.HttpAddress;
import castwell.web.settings.HttpSettings;
import java.util.List;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * What the page and its API are served from.
 *
 * @param http who may come to it, and how many
 * @param address where it is to be served
 * @param nanos a monotonic clock
 * @param broker how each station stands with the broker; nothing when none is configured
 * @param rehearsal whether the range is pretended
 */
public record Parts(
    Store store,
    Commands commands,
    Capture capture,
    Announcer announcer,
    Checkup checkup,
    CaptureSettings settings,
    HttpSettings http,
    HttpAddress address,
    Doorkeeper door,
    OnwardClock clock,
    LongSupplier nanos,
    Supplier<List<BrokerState>> broker,
    boolean rehearsal) {}
