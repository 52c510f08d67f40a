package castwell.capture.publish;

import castwell.capture.device.Link;
import castwell.capture.device.Port;
import castwell.capture.device.PortUnavailable;
import castwell.capture.publish.broker.BrokerSettings;
import castwell.capture.publish.broker.BrokerUnavailable;

/**
 * The port of a board that is heard over a broker: a wireless board, or one at another machine's
 * port. Both ends send the sentences of the serial wire, in pieces of any size, on the station's
 * one topic; neither hears itself.
 */
public final class WirePort implements Port {
  private final BrokerSettings settings;
  private final String clientId;
  private final String topic;

  private WirePort(BrokerSettings settings, String role, String station) {
    this.settings = settings;
    this.clientId = "castwell-" + role + "-" + station;
    this.topic = new Topics(station).wire();
  }

  /** The end at which the station's board is listened to. */
  public static WirePort ofListener(BrokerSettings settings, String station) {
    return new WirePort(settings, "wire", station);
  }

  /** The end at which a board's sentences are passed on. */
  public static WirePort ofForwarder(BrokerSettings settings, String station) {
    return new WirePort(settings, "forward", station);
  }

  @Override
  public String name() {
    return topic + " at " + settings.url();
  }

  @Override
  public Link open() throws PortUnavailable {
    try {
      return WireLink.open(settings.broker(), clientId, topic);
    } catch (BrokerUnavailable e) {
      throw new PortUnavailable(e.phrase());
    }
  }
}
