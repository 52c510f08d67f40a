package castwell.web.chart;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.List;

/**
 * A picture of figures, with a sentence that says what it shows and with the figures themselves.
 *
 * @param id unlike that of any other chart of the page
 * @param table the same figures in rows
 */
public record Chart(
    @JsonIgnore String id,
    @JsonIgnore String title,
    String sentence,
    Axis x,
    Axis y,
    List<Mark> marks,
    @JsonIgnore FigureTable table) {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  public Chart {
    marks = List.copyOf(marks);
  }

  public boolean isEmpty() {
    return marks.isEmpty();
  }

  /** The chart as JSON, for the script that draws it. */
  public String json() {
    try {
      return JSON.writeValueAsString(this);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
