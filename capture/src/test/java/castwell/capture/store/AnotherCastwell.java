package castwell.capture.store;

import castwell.capture.AnotherJvm;
import java.io.IOException;
import java.nio.file.Path;

/** Another process that opens a data folder and holds it until told to end. */
final class AnotherCastwell {
  private AnotherCastwell() {}

  static AnotherJvm writingTo(Path folder) throws IOException {
    return AnotherJvm.running(AnotherCastwell.class, folder.toString());
  }

  public static void main(String[] arguments) throws IOException {
    try (Store store = Store.open(Path.of(arguments[0]))) {
      store.writing(t -> t.rack().addBow("heron", Rows.NOON));
      System.out.println("open");
      while (System.in.read() >= 0) {
        // until the other side ends
      }
    } catch (StoreRefused e) {
      System.out.println(e.getMessage());
    }
  }
}
