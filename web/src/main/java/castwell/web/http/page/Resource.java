package castwell.web.http.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;

/** Files that the program's own archive holds. */
final class Resource {
  private Resource() {}

  /** Empty where there is none of that path. */
  static Optional<byte[]> read(String path) {
    try (InputStream in = Resource.class.getResourceAsStream(path)) {
      return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
