package castwell.web.chart;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;

/**
 * Something drawn in a chart, in the axes' own units. Its name is shown in the legend, unless it is
 * "".
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Mark.Points.class, name = "points"),
  @JsonSubTypes.Type(value = Mark.Line.class, name = "line"),
  @JsonSubTypes.Type(value = Mark.Band.class, name = "band"),
  @JsonSubTypes.Type(value = Mark.Region.class, name = "region"),
  @JsonSubTypes.Type(value = Mark.Level.class, name = "level")
})
public sealed interface Mark {
  String name();

  Style style();

  /**
   * A point, with or without a whisker.
   *
   * @param low the lower end of a whisker along the axis of numbers, null without one
   * @param label told when the point is pointed at or focused
   * @param low of a whisker along the axis of numbers, null without one
   * @param label told when the point is pointed at or focused
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Point(double x, double y, Double low, Double high, String label) {

    public static Point of(double x, double y, String label) {
      return new Point(x, y, null, null, label);
    }
  }

  /**
   * @param along the axis that whiskers lie along: 'x' or 'y'
   */
  record Points(String name, Style style, char along, List<Point> points) implements Mark {
    public static Points of(String name, Style style, List<Point> points) {
      return new Points(name, style, 'y', List.copyOf(points));
    }
  }

  record Line(String name, Style style, double[] x, double[] y) implements Mark {}

  /** The area between a low and a high value at each x. */
  record Band(String name, Style style, double[] x, double[] low, double[] high) implements Mark {}

  /** The inside of an outline, whose last corner is joined to the first. */
  record Region(String name, Style style, double[] x, double[] y) implements Mark {}

  /**
   * A straight line across the chart.
   *
   * @param axis the axis that it is a value of: 'x' or 'y'
   */
  record Level(String name, Style style, char axis, double value) implements Mark {}
}
