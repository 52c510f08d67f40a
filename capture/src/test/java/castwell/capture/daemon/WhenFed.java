package castwell.capture.daemon;

import castwell.capture.announce.Announcer;
import castwell.capture.station.LinkState;
import castwell.capture.station.StoreState;

/** Calls when something was committed. */
record WhenFed(Runnable look) implements Announcer.Listener {
  @Override
  public void fedMore() {
    look.run();
  }

  @Override
  public void linkChanged(LinkState state) {}

  @Override
  public void storeChanged(StoreState state) {}
}
