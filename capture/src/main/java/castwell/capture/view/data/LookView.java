package castwell.capture.view.data;

import castwell.capture.view.Meaning;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A sheet before it is taken in, and what taking it in would do. */
public record LookView(
    @Meaning("the file's own") List<String> headings,
    @Meaning("what each of them would be read as") Map<String, String> meant,
    @Meaning("all that such a sheet may have, the needed ones with true")
        Map<String, Boolean> columns,
    @Meaning("the first ones, as they are written") List<List<String>> rows,
    @JsonInclude(JsonInclude.Include.NON_ABSENT) @Meaning("where it can be taken in")
        Optional<TakenView> would,
    @JsonInclude(JsonInclude.Include.NON_ABSENT) @Meaning("why it can't be")
        Optional<String> refused,
    @JsonInclude(JsonInclude.Include.NON_ABSENT) @Meaning("each bad line, where it can't be")
        Optional<List<BadLine>> lines) {}
