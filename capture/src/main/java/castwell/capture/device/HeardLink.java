package castwell.capture.device;

import java.io.IOException;
import java.util.Arrays;

/** A link of which some bytes were read already; reading gives these first. */
final class HeardLink implements Link {
  private final Link link;
  private byte[] heard;

  HeardLink(Link link, byte[] heard) {
    this.link = link;
    this.heard = heard;
  }

  @Override
  public int read(byte[] buffer) {
    if (heard.length == 0) {
      return link.read(buffer);
    }
    int count = Math.min(heard.length, buffer.length);
    System.arraycopy(heard, 0, buffer, 0, count);
    heard = Arrays.copyOfRange(heard, count, heard.length);
    return count;
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    link.write(bytes);
  }

  @Override
  public void close() {
    link.close();
  }
}
