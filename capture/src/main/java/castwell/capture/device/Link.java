package castwell.capture.device;

import java.io.IOException;

/** An open connection to one board, for bytes in and bytes out. One thread reads; any may write. */
public interface Link extends AutoCloseable {

  /**
   * Waits for bytes, half a second at most.
   *
   * @return how many bytes were put into the buffer; 0 when none came; -1 when the link is gone for
   *     good
   */
  int read(byte[] buffer);

  /**
   * Writes all these bytes.
   *
   * @throws IOException when the link is gone
   */
  void write(byte[] bytes) throws IOException;

  /** Closes the link and wakes a waiting {@link #read}. Closing twice does nothing. */
  @Override
  void close();
}
