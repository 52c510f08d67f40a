package castwell.capture.view;

import com.fasterxml.jackson.annotation.JsonFormat;
import java.util.OptionalDouble;

/** A 95 % interval, written as a list of its two ends; an open or unknown one is null. */
@JsonFormat(shape = JsonFormat.Shape.ARRAY)
public record Interval95(OptionalDouble low, OptionalDouble high) {
  /** An interval of which nothing is known. */
  public static final Interval95 NOT_KNOWN =
      new Interval95(OptionalDouble.empty(), OptionalDouble.empty());

  /** Whether both ends are known. */
  public boolean hasBothEnds() {
    return low.isPresent() && high.isPresent();
  }
}
