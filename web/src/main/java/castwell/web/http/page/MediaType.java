package castwell.web.http.page;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What the files that browsers get are. */
enum MediaType {
  HTML("text/html; charset=utf-8"),
  JS("text/javascript; charset=utf-8"),
  CSS("text/css; charset=utf-8"),
  SVG("image/svg+xml");

  private final String header;

  MediaType(String header) {
    this.header = header;
  }

  String header() {
    return header;
  }

  /** By how a file's name ends. */
  static Optional<MediaType> of(String ending) {
    return Stream.of(values())
        .filter(type -> type.name().toLowerCase(Locale.ROOT).equals(ending))
        .findFirst();
  }
}
