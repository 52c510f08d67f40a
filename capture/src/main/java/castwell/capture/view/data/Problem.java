package castwell.capture.view.data;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Optional;

/** What went wrong (RFC 9457). */
public record Problem(
    String type,
    @Meaning("the status in words") String title,
    @Meaning("the HTTP status") int status,
    @Meaning("a sentence for people") String detail,
    @JsonInclude(JsonInclude.Include.NON_ABSENT) @Meaning("each bad line of a sheet")
        Optional<List<BadLine>> lines) {

  public static Problem of(int status, String title, String detail) {
    return new Problem("about:blank", title, status, detail, Optional.empty());
  }

  public Problem with(List<BadLine> bad) {
    return new Problem(type, title, status, detail, Optional.of(bad));
  }
}
